import { barsCsv } from './bars-csv.ts';
import { bendTableCsv } from './bend-table-csv.ts';
import { centrelineDxf } from './centreline-dxf.ts';
import { cutListCsv } from './cut-list-csv.ts';
import type { Exported, ExportInput } from './export-file.ts';
import { legsCsv } from './legs-csv.ts';
import { levelCsv } from './level-csv.ts';
import { membersCsv } from './members-csv.ts';
import { quoteCsv } from './quote-csv.ts';
import { solidJob } from './solid-job.ts';
import type { StepMaker } from './step-maker.ts';
import { viewSvg } from './view-svg.ts';
import { viewsDxf } from './views-dxf.ts';
import { weldsCsv } from './welds-csv.ts';
import { wrapsDxf } from './wraps-dxf.ts';
import { wrapsSvg } from './wraps-svg.ts';

export const EXPORT_NAMES = [
  'bend-table.csv',
  'members.csv',
  'welds.csv',
  'legs.csv',
  'level.csv',
  'cut-list.csv',
  'bars.csv',
  'quote.csv',
  'centreline.dxf',
  'views.dxf',
  'view-face.svg',
  'view-top.svg',
  'view-side.svg',
  'view-pictorial.svg',
  'wraps.svg',
  'wraps.dxf',
  'solid.step',
] as const;
export type ExportName = (typeof EXPORT_NAMES)[number];

/** Media types: RFC 4180 and RFC 7111 for CSV, the register of IANA for the others. */
const MEDIA_TYPES: Readonly<Record<string, string>> = {
  csv: 'text/csv; charset=utf-8; header=present',
  svg: 'image/svg+xml',
  dxf: 'image/vnd.dxf',
  step: 'model/step',
};

export const mediaType = (name: ExportName): string =>
  MEDIA_TYPES[name.slice(name.lastIndexOf('.') + 1)] ?? 'application/octet-stream';

async function solidStep(input: ExportInput, maker: StepMaker): Promise<Exported> {
  const solid = solidJob(input);
  return solid.ok ? maker.make(solid.job) : solid;
}

const WRITERS: Readonly<Record<ExportName, (input: ExportInput, maker: StepMaker) => Exported | Promise<Exported>>> = {
  'bend-table.csv': bendTableCsv,
  'members.csv': membersCsv,
  'welds.csv': weldsCsv,
  'legs.csv': legsCsv,
  'level.csv': levelCsv,
  'cut-list.csv': cutListCsv,
  'bars.csv': barsCsv,
  'quote.csv': quoteCsv,
  'centreline.dxf': centrelineDxf,
  'views.dxf': viewsDxf,
  'view-face.svg': (input) => viewSvg('face', input),
  'view-top.svg': (input) => viewSvg('top', input),
  'view-side.svg': (input) => viewSvg('side', input),
  'view-pictorial.svg': (input) => viewSvg('pictorial', input),
  'wraps.svg': wrapsSvg,
  'wraps.dxf': wrapsDxf,
  'solid.step': solidStep,
};

/** An export of the frame as wanted, of the wraps and welds of what is to be made, of its legs, of what a level must show,
 * of what is sawn and of its prices, or why there is none. The same input gives the same text; STEP carries its hour. */
export const writeExport = async (name: ExportName, input: ExportInput, maker: StepMaker): Promise<Exported> =>
  WRITERS[name](input, maker);
