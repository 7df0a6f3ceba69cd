import { DxfWriter, Units } from '@tarikjabiri/dxf';
import { plainText } from './plain-text.ts';

/** An empty drawing in millimetres ($INSUNITS 4, $MEASUREMENT 1: metric line types), in the version of AC1021. */
export function dxfDocument(): DxfWriter {
  const drawing = new DxfWriter();
  drawing.setUnits(Units.Millimeters);
  drawing.setVariable('$MEASUREMENT', { 70: 1 });
  drawing.setVariable('$LASTSAVEDBY', { 1: 'Hoopwright' });
  return drawing;
}

/** The drawing as text, its last line ended like every other. */
export const dxfText = (drawing: DxfWriter): string => `${drawing.stringify()}\n`;

/** Colours of the index that every reader knows (DXF reference, group 62): 7 is black on paper, white on black. */
export const DXF_COLOURS = { ink: 7, red: 1, green: 3, blue: 5, grey: 8 } as const;

/** A layer's name: the signs that a symbol name cannot hold are left out (DXF reference, symbol table names). */
export const layerName = (text: string): string => plainText(text).replace(/[<>/\\":;?*|=`,]/g, '-');

/** A coordinate without the noise of a double's last digits: a millionth of a micrometre [mm]. */
export const coordinate = (value: number): number => Math.round(value * 1e9) / 1e9 || 0; // never −0
