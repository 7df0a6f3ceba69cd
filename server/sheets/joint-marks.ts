import type { Units } from '../job/job.ts';
import { formatLength } from '../language/length-format.ts';
import { formatBand, formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { ReturnedMember, Way } from '../plan/correction.ts';
import type { Joint, TapeMarks } from '../plan/joint.ts';
import type { Flow } from './flow.ts';
import { HEIGHTS, STROKES } from './ink.ts';
import { SQUARE } from './joint-slice.ts';
import { picture } from './picture.ts';
import type { SheetInput } from './sheet-input.ts';
import { stepHead } from './step.ts';
import { straightTube, type Stretch, type TubeMark } from './straight-tube.ts';
import { table, tableHeight, type Cell, type Table } from './table.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';

/** Step: every cut member laid straight with tape distances, under it both faces of its joints along four generators. */
export function findMarks(flow: Flow, way: Way, input: SheetInput, number: number): void {
  const { job, plan } = input;
  const band = way.joints[0]?.faceA.marks.generators[0]?.distance.band ?? null;
  const sure = band === null ? '' : ` ${words('sheet.marks-band', { band: formatBand(band, 'mm', job.units) })}`;
  const members = [...new Set(way.joints.map(({ member }) => member))].map((name) => {
    const joints = way.joints.filter(({ member }) => member === name);
    const member = plan.correction?.members.find((one) => one.name === name);
    const before =
      member === undefined ? [paragraph(name, flow.width, { weight: 600 })] : laid(member, joints, flow, job);
    return { joints, before, rows: marksTable(joints, flow.width, job.units) };
  });
  const head = stacked([
    stepHead(number, words('sheet.step-marks'), flow.width),
    paragraph(`${words('sheet.along-surface')}${sure}`, flow.width, { height: HEIGHTS.small }),
    space(1.5),
  ]);
  const [next] = members;
  const small = jointsInFrame(flow.width, SMALL, input);
  const taken = head.height + small.height;
  const follows = next === undefined ? 0 : stacked(next.before).height + tableHeight(next.rows);
  // where the first member begins a new page, the picture takes what is left of this one
  const alone = taken <= flow.left && taken + follows > flow.left;
  flow.add(stacked([head, alone ? jointsInFrame(flow.width, flow.left - head.height, input) : small]));
  for (const { joints, before, rows } of members) {
    flow.addTable(rows, before);
    const scribed = joints.filter(({ twist }) => Math.abs(twist.value) >= SQUARE);
    flow.add(
      stacked([
        space(1.5),
        ...scribed.map((joint) => paragraph(scribeWords(joint, job.units), flow.width, { weight: 600 })),
        space(2.5),
      ]),
    );
  }
}

/** Height of the picture that says which joint is where, and of its caption [mm]. */
const SMALL = 66;
const CAPTION = 4;

/** Which joint is where. */
function jointsInFrame(width: number, height: number, { plan }: SheetInput): Block {
  const view = plan.views.find(({ marks }) => marks.some(({ kind }) => kind === 'joint'));
  if (view === undefined) return space(0);
  const drawn = picture(
    view,
    {
      layers: ['corrected'],
      dimensions: () => false,
      marks: ({ kind }) => kind === 'joint',
      member: null,
      say: () => '',
    },
    { width, height: height - CAPTION },
  );
  const caption = words('sheet.joints-in-frame', { scale: drawn.scale.text });
  return stacked([paragraph(caption, width, { height: HEIGHTS.small }), drawn]);
}

function laid(member: ReturnedMember, joints: readonly Joint[], flow: Flow, job: SheetInput['job']): Block[] {
  const tube = { diameter: job.tube.outsideDiameter, ...markedMember(member, joints, job.units) };
  const drawn = straightTube(tube, flow.width);
  const caption = words('sheet.member-straight', { member: member.name, scale: drawn.scale.text });
  return [paragraph(caption, flow.width, { weight: 600 }), drawn.block];
}

/** A place on the tube laid straight: a face, or where an arc begins or ends. */
type Place = TubeMark & { readonly scrap: string };

/** Where arcs of a member begin and end, by the name that the marks use for them. */
function bendPlaces({ pieces }: ReturnedMember, units: Units): Place[] {
  const places: Place[] = [];
  const counted = { die: 0, rolled: 0 };
  let station = 0;
  for (const piece of pieces) {
    if (piece.kind === 'arc') {
      counted[piece.made] += 1;
      for (const [key, at] of [
        ['start', station],
        ['end', station + piece.length],
      ] as const) {
        const label = words('sheet.mark-bend', {
          place: wordsOf('bendPlace', `${piece.made}-${key}`, { bend: counted[piece.made] }),
          distance: formatLength(at, units),
        });
        places.push({ station: at, label, stroke: STROKES.centreline, scrap: '' });
      }
    }
    station += piece.length;
  }
  return places;
}

/** The member as it came back: where its arcs begin and end, both faces of each joint, the piece between them hatched. */
function markedMember(
  member: ReturnedMember,
  joints: readonly Joint[],
  units: Units,
): { stretches: Stretch[]; marks: TubeMark[] } {
  const length = member.developedLength;
  const faces = joints.flatMap((joint) =>
    (['A', 'B'] as const).map((side): Place => {
      const station = (side === 'A' ? joint.faceA : joint.faceB).station.value;
      const distance = formatLength(station, units);
      return {
        station,
        label: words('sheet.mark-face', { joint: joint.number, side, distance }),
        stroke: STROKES.narrow,
        bold: true,
        scrap: side === 'B' ? words('sheet.joint-number', { number: joint.number }) : '',
      };
    }),
  );
  const inner = bendPlaces(member, units).filter(({ station }) => station > 0.05 && station < length.value - 0.05);
  const places = [...inner, ...faces].toSorted((one, other) => one.station - other.station);
  const stretches: Stretch[] = [];
  const open = new Set<string>();
  let reached = 0;
  for (const place of places) {
    // between the two faces of a joint an arc may begin or end: its scrap then has several stretches
    const hatched = open.size > 0;
    const caption = place.scrap;
    stretches.push({ length: Math.max(0, place.station - reached), breakable: true, hatched, caption });
    reached = Math.max(reached, place.station);
    const joint = joints.find(({ faceA, faceB }) =>
      [faceA, faceB].some((face) => face.station.value === place.station),
    );
    if (place.scrap !== '') open.delete(String(joint?.number));
    else if (joint !== undefined && place.bold === true) open.add(String(joint.number));
  }
  stretches.push({ length: Math.max(0, length.value - reached), breakable: true, hatched: false, caption: '' });
  const marks: TubeMark[] = [
    { station: 0, label: words('sheet.datum-end'), stroke: STROKES.edge },
    ...places,
    { station: length.value, label: formatFigure(length, units), stroke: STROKES.edge },
  ];
  return { stretches, marks };
}

/** 'end of bend 1, towards the far end'. */
const fromWords = ({ from, bend, towards }: TapeMarks): string =>
  words('sheet.tape-from', {
    place: wordsOf('measuredFrom', from, { bend }),
    towards: words(towards === 'finish' ? 'sheet.towards-finish' : 'sheet.towards-start'),
  });

/** Both faces of each joint along four generators from one point, then from another one to check with. */
function marksTable(joints: readonly Joint[], width: number, units: Units): Table {
  const generators = joints[0]?.faceA.marks.generators ?? [];
  const row = (name: string, marks: TapeMarks, weight: 400 | 600): Cell[] => [
    { text: name, weight },
    ...marks.generators.map(({ distance }): Cell => ({ text: formatFigure(distance, units), weight })),
    fromWords(marks),
  ];
  return table(
    [
      { head: words('sheet.joint-face'), align: 'left' },
      ...generators.map(({ key }) => ({ head: wordsOf('generator', key), align: 'right' as const })),
      { head: words('sheet.measured-from'), align: 'left' },
    ],
    joints.flatMap(({ number, faceA, faceB }) =>
      ([['A', faceA] as const, ['B', faceB] as const] as const).flatMap(([side, face]): Cell[][] => [
        row(`${String(number)} ${side}`, face.marks, 600),
        ...(face.check === null ? [] : [row(words('sheet.to-check'), face.check, 400)]),
      ]),
    ),
    { width },
  );
}

/** A line along the tube over the joint, and which way it steps aside when the joint is closed. */
function scribeWords({ number, twist }: Joint, units: Units): string {
  const angle = formatFigure({ ...twist, value: Math.abs(twist.value) }, units);
  return twist.value > 0
    ? words('sheet.scribe-clockwise', { number, angle })
    : words('sheet.scribe-anticlockwise', { number, angle });
}
