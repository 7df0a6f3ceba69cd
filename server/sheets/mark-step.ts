import type { Job } from '../job/job.ts';
import { formatLength } from '../language/length-format.ts';
import { words } from '../language/words.ts';
import type { MemberPlan } from '../plan/frame.ts';
import { HEIGHTS, STROKES } from './ink.ts';
import { straightTube, type Stretch, type Tube, type TubeMark } from './straight-tube.ts';
import { paragraph, type Block } from './text-block.ts';

/** More bends than this, and their marks are lettered smaller. */
const FEW = 6;

/** The tube laid straight with every mark's distance from the datum end, row by row, and how to set them. */
export function markStep(member: MemberPlan, job: Job, width: number): Block[] {
  const { rows, scale } = straightTube(markedTube(member, job), width);
  return [...rows, paragraph(words('sheet.marks', { scale: scale.text }), width)];
}

/** The member's tube before bending: start and middle of each bend from the datum end, for a rolled one its end too. */
function markedTube(member: MemberPlan, { tube, units }: Job): Tube {
  const stretches: Stretch[] = [];
  const marks: TubeMark[] = [];
  let reached = 0;
  const stretch = (to: number, breakable: boolean): void => {
    stretches.push({ length: Math.max(0, to - reached), breakable, hatched: false, caption: '' });
    reached = Math.max(reached, to);
  };
  const say = (key: 'sheet.mark-start' | 'sheet.mark-middle' | 'sheet.mark-end', bend: number, at: number): string =>
    words(key, { bend, distance: formatLength(at, units) });
  for (const { number, made, startMark, middleMark, endMark } of member.bends) {
    const rolled = made === 'rolled';
    stretch(startMark.value, true);
    stretch(middleMark.value, rolled);
    stretch(endMark.value, rolled);
    marks.push(
      {
        station: startMark.value,
        label: say('sheet.mark-start', number, startMark.value),
        stroke: STROKES.edge,
        bold: true,
      },
      {
        station: middleMark.value,
        label: say('sheet.mark-middle', number, middleMark.value),
        stroke: STROKES.centreline,
      },
    );
    if (!rolled) continue;
    const label = say('sheet.mark-end', number, endMark.value);
    marks.push({ station: endMark.value, label, stroke: STROKES.hidden });
  }
  stretch(member.cutLength.value, true);
  marks.unshift({ station: 0, label: words('sheet.datum-end'), stroke: STROKES.edge });
  marks.push({
    station: reached,
    label: words('sheet.cut-at', { distance: formatLength(member.cutLength.value, units) }),
    stroke: STROKES.edge,
  });
  const lettering = member.bends.length <= FEW ? HEIGHTS.head : HEIGHTS.text;
  return { diameter: tube.outsideDiameter, stretches, marks, lettering };
}
