import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { DEGREES } from '../geometry/angle.ts';
import { isDieBend } from '../geometry/centreline.ts';
import type { CorrectionWork } from './correction-work.ts';
import type { Outcome } from './outcome.ts';
import type { Rebending } from './rebend.ts';
import type { RelaidFrame } from './relaid-frame.ts';
import { MOST_OPENING } from './turn-limits.ts';

/** Opening by less than this is what a bend moves by itself [rad]: 0.1 degrees, common practice, no source. */
const OPENED = 0.1 / DEGREES;

/** A width across the corners that is off by more than so many accuracies of the tape is told. */
const TAPES = 2;

const FIELD = '/closing/way';

/** What there is to say about bending a frame again: what is opened, what a limit ends, and what cannot be reached. */
export function rebendFindings(of: {
  readonly work: CorrectionWork;
  readonly rebending: Rebending;
  readonly relaid: RelaidFrame;
  readonly after: Outcome;
}): Finding[] {
  const { work, rebending, relaid, after } = of;
  const turned = rebending.turns.filter(({ turn }) => turn !== 0);
  const opened = turned
    .filter(({ made, turn }) => made === 'die' && turn < -OPENED)
    .map(({ member, bend, turn }) => {
      const data = { member, bend, value: -turn * DEGREES, high: MOST_OPENING * DEGREES };
      return finding('rebend-opens-bend', 'caution', FIELD, data);
    });
  const between = turned
    .filter(({ made }) => made === 'rolled')
    .flatMap(({ member, piece }) => {
      const pieces = work.actual.members.find(({ name }) => name === member)?.centreline.pieces ?? [];
      const isDie = (index: number) => {
        const one = pieces[index];
        return one !== undefined && isDieBend(one);
      };
      const value = pieces[piece]?.length ?? 0;
      return isDie(piece - 1) && isDie(piece + 1)
        ? [finding('re-roll-between-bends', 'caution', FIELD, { member, value })]
        : [];
    });
  const off = relaid.refitted
    .filter((one) => one.off > work.tape)
    .map(({ member, off: value }) => finding('rebend-saddle-off', 'caution', FIELD, { member, value }));
  return [...opened, ...rebending.limited.map(limitFinding), ...between, ...off, ...cornersLeft(work, after)];
}

/** What keeps a bend from being turned as far as the frame would need. */
function limitFinding({ limit, turn, wants }: Rebending['limited'][number]): Finding {
  const { arc, highReason, lowReason, straight, least } = limit;
  const where = { member: arc.member, bend: arc.bend };
  const further = wants > turn;
  const needs = Math.round(wants * DEGREES * 10) / 10;
  switch (further ? highReason : lowReason) {
    case 'grip':
      return finding('rebend-no-grip', 'caution', FIELD, { ...where, value: straight, low: least, turn: needs });
    case 'straight':
      return finding('rebend-no-straight', 'caution', FIELD, { ...where, value: straight, turn: needs });
    case 'machine':
      return finding('rebend-over-machine', 'caution', FIELD, { ...where, turn: needs });
    case 'opening':
    case 'crown': {
      const value = turn * DEGREES;
      const end = (further ? limit.high : limit.low) * DEGREES;
      return finding('rebend-at-limit', 'caution', FIELD, { ...where, value, [further ? 'high' : 'low']: end });
    }
  }
}

/** Across the corners nothing is changed by turning bends. */
function cornersLeft({ tape }: CorrectionWork, { sizes }: Outcome): Finding[] {
  const corner = sizes.find(({ check }) => check.key === 'width-at-corners');
  const value = corner === undefined ? 0 : corner.after - corner.wanted;
  return Math.abs(value) > TAPES * tape ? [finding('rebend-cannot-narrow', 'note', FIELD, { value })] : [];
}
