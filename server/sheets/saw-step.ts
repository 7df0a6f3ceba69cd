import type { Job } from '../job/job.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { formatLength } from '../language/length-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { MemberPlan } from '../plan/frame.ts';
import { figuresRow, type Named } from './figures-row.ts';
import { HEIGHTS, STROKES, box, moved, write } from './ink.ts';
import { tubeWords } from './sheet-input.ts';
import { fitted, paragraph, stacked, type Block } from './text-block.ts';

/** Room that the large cut length takes [mm]. */
const LARGE = 74;

/** Air in the box that says mirrored [mm]. */
const INSET = 3;

/** What is sawn and what it is bent on: the cut length large over the tube, beside it machine, die and which way round. */
export function sawStep(member: MemberPlan, job: Job, width: number): Block {
  const length: Named = { name: words('sheet.cut-length'), value: formatFigure(member.cutLength, job.units) };
  const cut = stacked([
    figuresRow([length], LARGE, HEIGHTS.wall),
    figuresRow([{ name: words('sheet.tube'), value: tubeWords(job) }], LARGE, HEIGHTS.head),
  ]);
  const facts = figuresRow(factsOf(member, job), width - LARGE - 4, HEIGHTS.head);
  return {
    height: Math.max(cut.height, facts.height) + 1,
    items: [...cut.items, ...facts.items.map((item) => moved(item, [LARGE + 4, 0]))],
  };
}

function factsOf(member: MemberPlan, job: Job): Named[] {
  const { machine } = job;
  const die = machine.dies[machine.die];
  return [
    {
      name: words('sheet.machine'),
      value: machine.name === '' ? words('sheet.machine-unnamed') : machine.name,
    },
    ...(job.tube.heat === '' ? [] : [{ name: words('sheet.heat'), value: job.tube.heat }]),
    { name: words('sheet.mass'), value: formatFigure(member.mass, job.units) },
    ...(die === undefined
      ? []
      : [
          { name: words('sheet.die-set-up'), value: dieWords(die, job) },
          { name: words('sheet.inside-tube'), value: wordsOf('tooling', die.tooling) },
        ]),
    { name: words('sheet.datum-end-is'), value: datumWords(member) },
    {
      name: words('sheet.die-side'),
      value: words(member.making.side === 'right' ? 'sheet.side-right' : 'sheet.side-left'),
    },
  ];
}

function dieWords({ name, radius, tubeDiameter }: Job['machine']['dies'][number], { units }: Job): string {
  const sizes = { radius: formatLength(radius, units), diameter: formatLength(tubeDiameter, units) };
  return name === '' ? words('sheet.die-of', sizes) : words('sheet.die-of-named', { name, ...sizes });
}

/** Which end is the datum end; an end that sits on another member is told by it. */
function datumWords({ making, start, finish }: MemberPlan): string {
  const end = making.from === 'start' ? start : finish;
  if (end.onto === null) return words(making.from === 'start' ? 'sheet.datum-start' : 'sheet.datum-finish');
  const onto = { member: end.onto };
  return making.from === 'start' ? words('sheet.datum-start-saddle', onto) : words('sheet.datum-finish-saddle', onto);
}

/** A title; where the frame is mirrored, that stands beside it in a box where nobody can miss it. */
export function titleLine(title: string, { bending }: Job, width: number): Block {
  const how = { height: HEIGHTS.title, weight: 600 } as const;
  if (bending.hand !== 'mirrored') return paragraph(title, width, how);
  const said = write([width - INSET, 7], words('sheet.mirrored'), { ...how, align: 'right' });
  const left = width - said.width - 2 * INSET;
  const text = fitted(title, left - INSET, how);
  return {
    height: 11,
    items: [
      write([0, 7], text.text, { ...how, height: text.height }),
      box('frame', { left, top: 0, width: width - left, height: 9.5 }, { ...STROKES.edge, width: 1 }),
      said,
    ],
  };
}
