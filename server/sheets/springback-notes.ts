import type { Job } from '../job/job.ts';
import { formatBand, formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { SpringbackPlan } from '../plan/bending.ts';
import type { MemberPlan } from '../plan/frame.ts';
import { HEIGHTS } from './ink.ts';
import { isEasy, protractor, type TrueAngle } from './protractor.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';

/** How springback was found and how sure it is. */
export function springbackNotes(springback: SpringbackPlan, { units }: Job, width: number): Block {
  const { method, shareAt90, bendTo90, fit, bendsOfTube } = springback;
  const band = bendTo90.band === null ? '' : ` ${formatBand(bendTo90.band, bendTo90.unit, units)}`;
  const said = [
    words('sheet.springback', {
      method: wordsOf('method', method),
      share: `${(100 * shareAt90.value).toFixed(1)} %`,
      angle: `${formatFigure(bendTo90, units)}${band}`,
    }),
  ];
  if (fit === null) {
    said.push(
      bendsOfTube.length === 0
        ? words('sheet.springback-none')
        : words('sheet.springback-unused', { count: bendsOfTube.length }),
    );
  } else {
    const confidence = `± ${formatFigure(fit.confidence, units)}`;
    said.push(words('sheet.springback-fit', { count: fit.bends.length, confidence }));
    if (fit.heat !== '') said.push(words('sheet.springback-heat', { heat: fit.heat }));
    said.push(
      fit.residual === null
        ? words('sheet.springback-two')
        : words('sheet.springback-residual', { residual: `± ${formatFigure(fit.residual, units)}` }),
    );
  }
  return stacked([
    paragraph(words('sheet.springback-title'), width, { height: HEIGHTS.head, weight: 600 }),
    paragraph(said.join(' '), width),
    space(2),
  ]);
}

/** The first die bend as a true angle, or 90 degrees where that one cannot be read off paper; nothing without either. */
export function firstAngle(member: MemberPlan, springback: SpringbackPlan | null, job: Job, width: number): Block[] {
  const bend = member.bends.find(({ made }) => made === 'die');
  if (bend === undefined) return [];
  const own: TrueAngle = { wanted: bend.angle, told: bend.angleToBendTo };
  const show = ({ wanted, told }: TrueAngle): { wanted: string; told: string } => ({
    wanted: formatFigure(wanted, job.units),
    told: formatFigure(told, job.units),
  });
  const drawn = (angle: TrueAngle, head: string): Block[] => [
    stacked([
      paragraph(head, width, { weight: 600 }),
      protractor(angle, job.units, width),
      paragraph(words('sheet.protractor-how'), width),
      space(2),
    ]),
  ];
  if (isEasy(own.wanted.value) && isEasy(own.told.value)) {
    return drawn(own, words('sheet.protractor-bend', { bend: bend.number, ...show(own) }));
  }
  if (springback === null) return [];
  const right = { ...springback.bendTo90, value: 90, band: null };
  const test: TrueAngle = { wanted: right, told: springback.bendTo90 };
  return drawn(test, words('sheet.protractor-test', show(test)));
}
