import type { DxfWriter } from '@tarikjabiri/dxf';
import type { Point } from '../plan/figure.ts';
import { coordinate, DXF_COLOURS, dxfDocument, dxfText, layerName } from './dxf-document.ts';
import { chosenMembers, exported, type ExportInput, type Exported } from './export-file.ts';
import { cross, direction, dot, minus, partsOfArc, realPieces, type Arc } from './in-space.ts';

/** An arc of a whole turn or more has no two angles of its own; it is written as parts of less than a turn [degrees]. */
const MOST_TURN = 350;
/** Below this a plane's axis counts as upright (DXF reference, arbitrary axis algorithm). */
const UPRIGHT = 1 / 64;

/**
 * The x and y axes of the plane of an entity that lies square to `normal`, as every reader of DXF sets them up again
 * from the normal alone (DXF reference, arbitrary axis algorithm).
 */
function planeAxes(normal: Point): { x: Point; y: Point } {
  const upright = Math.abs(normal.x) < UPRIGHT && Math.abs(normal.y) < UPRIGHT;
  const x = direction(cross(upright ? { x: 0, y: 1, z: 0 } : { x: 0, y: 0, z: 1 }, normal));
  return { x, y: cross(normal, x) };
}

const point = ({ x, y, z }: Point): Point => ({ x: coordinate(x), y: coordinate(y), z: coordinate(z) });

/** A true arc in space: centre and angles in its own plane, the plane by its normal. It turns anticlockwise, as ours do. */
function addArc(drawing: DxfWriter, arc: Arc, layer: string): void {
  const normal = direction(arc.normal);
  const { x, y } = planeAxes(normal);
  const arm = minus(arc.from, arc.centre);
  const start = (Math.atan2(dot(arm, y), dot(arm, x)) * 180) / Math.PI;
  const turned = (angle: number): number => ((angle % 360) + 360) % 360;
  const centre = { x: dot(arc.centre, x), y: dot(arc.centre, y), z: dot(arc.centre, normal) };
  drawing.addArc(point(centre), arc.radius, turned(start), turned(start + arc.angle), {
    layerName: layer,
    extrusion: normal,
  });
}

/** The centrelines in space, as lines and true arcs at full size, one layer a member. */
export function centrelineDxf(input: ExportInput): Exported {
  const chosen = chosenMembers(input);
  if (!chosen.ok) return chosen;
  const drawing = dxfDocument();
  chosen.members.forEach(({ name, pieces }, index) => {
    // numbered, so that names which differ only in signs that a layer cannot hold stay apart
    const layer = layerName(`${String(index + 1)} ${name}`);
    drawing.addLayer(layer, DXF_COLOURS.ink);
    for (const piece of realPieces(pieces)) {
      if (piece.kind === 'straight') drawing.addLine(point(piece.from), point(piece.to), { layerName: layer });
      else for (const part of partsOfArc(piece, MOST_TURN)) addArc(drawing, part, layer);
    }
  });
  return exported(dxfText(drawing));
}
