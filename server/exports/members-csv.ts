import { words, wordsOf } from '../language/words.ts';
import type { MemberPlan } from '../plan/frame.ts';
import { csvText, numberOf, type Column } from './csv.ts';
import { chosenMembers, exported, type ExportInput, type Exported } from './export-file.ts';

type MemberColumn = Column<MemberPlan>;

/** The columns of one end: what it is, what it sits on and how, and where it stands in the frame's axes. */
function endColumns(end: 'start' | 'finish'): MemberColumn[] {
  const head = (what: string, unit = ''): string => `${words(`export.head.${end}`)}: ${what}${unit}`;
  return [
    { head: head(words('export.head.end')), cell: (member) => wordsOf('choice.end', member[end].kind) },
    { head: head(words('export.head.onto')), cell: (member) => member[end].onto ?? '' },
    { head: head(words('export.head.axes-angle'), ' (deg)'), cell: (member) => member[end].angle },
    { head: head(words('export.head.axes-offset'), ' (mm)'), cell: (member) => member[end].offset },
    { head: head('x', ' (mm)'), cell: (member) => member[end].point.x },
    { head: head('y', ' (mm)'), cell: (member) => member[end].point.y },
    { head: head('z', ' (mm)'), cell: (member) => member[end].point.z },
  ];
}

const COLUMNS: readonly MemberColumn[] = [
  { head: words('export.head.member'), cell: ({ name }) => name },
  { head: words('export.head.bends'), cell: ({ bends }) => bends.length },
  { head: `${words('export.head.cut-length')} (mm)`, cell: ({ cutLength }) => numberOf(cutLength) },
  { head: `${words('export.head.developed-length')} (mm)`, cell: ({ developedLength }) => numberOf(developedLength) },
  { head: `${words('export.head.last-straight')} (mm)`, cell: ({ lastStraight }) => numberOf(lastStraight) },
  { head: `${words('export.head.mass')} (kg)`, cell: ({ mass }) => numberOf(mass) },
  ...endColumns('start'),
  ...endColumns('finish'),
];

/** What is sawn and what stands at its ends: one row a member. */
export function membersCsv(input: ExportInput): Exported {
  const chosen = chosenMembers(input);
  return chosen.ok ? exported(csvText(COLUMNS, chosen.members)) : chosen;
}
