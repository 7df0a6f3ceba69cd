import { firstContact, type Clearance } from '../../joints/first-contact.ts';
import { LEAST_STEP, rangeOf, saddleReach, type BranchLine } from '../../joints/saddle-wrap.ts';
import type { KnownSaddle, SaddleCut } from './head-cut.ts';

/** Lines round the leg that are followed from its foot to the tube: every 10 degrees, our own choice. */
const ROUND = 36;
const TURN = (2 * Math.PI) / ROUND;

/** Places along the leg's axis at which its way out of the tube is looked at; our own choice. */
const PLACES = 48;

/** A cut that still changes by this share of the tube's radius over a few thousandths of a degree is torn: our own choice. */
const TORN = 1 / 40;
const HALVINGS = 12;

/** What a leg's axis may come nearer to the tube again [mm]: rounding. */
const NEARER = 1e-6;

/**
 * Follows lines round a leg from its foot to the tube that its head sits on, on a tube that is curved there. Where all of
 * them meet it first at this head and the places hang together all round, a saddle fits, and where its lines meet the tube
 * is known from then on.
 *
 * @param long from the foot point to the head [mm]
 * @returns undefined where no saddle fits: a line misses the tube, the cut is torn, or the tube bends back into the leg
 */
export function traceSaddle(head: SaddleCut, long: number): KnownSaddle | undefined {
  const { seat, pieces } = head;
  const { distance } = seat;
  if (distance === null) return { pieces, known: undefined };
  const outer = contactsRound(head, distance, head.outer, long);
  const inner = contactsRound(head, distance, head.inner, long);
  if (inner.some((contact) => contact === undefined) || isBack(distance, inner, outer)) return undefined;
  const known = (radius: number, turned: number): number | undefined =>
    between(radius === head.outer ? outer : inner, turned);
  return isTorn({ ...head, seat: { ...seat, known } }, inner, outer) ? undefined : { pieces, known };
}

type Contacts = readonly (number | undefined)[];
type Lines = (line: BranchLine) => Clearance;

/** Where lines at a radius first meet the tube that come from the foot, or from beyond it on a short leg [mm]. */
function contactsRound({ seat }: SaddleCut, distance: Lines, radius: number, long: number): Contacts {
  const { mainRadius } = seat;
  const { far, near } = rangeOf(seat, radius);
  const range = { far: Math.max(far, long), near, least: LEAST_STEP * mainRadius };
  return Array.from({ length: ROUND }, (_, index) => {
    const turned = index * TURN;
    const from = distance({ acute: radius * Math.cos(turned), quarter: radius * Math.sin(turned) });
    return firstContact((along) => from(along) - mainRadius, range);
  });
}

/** Whether the leg's axis comes nearer to the tube's again before the whole leg is clear of it. */
function isBack(distance: Lines, ...contacts: readonly Contacts[]): boolean {
  const furthest = Math.max(...contacts.flatMap((round) => round.filter((contact) => contact !== undefined)));
  const axis = distance({ acute: 0, quarter: 0 });
  let before = axis(0);
  for (let index = 1; index <= PLACES; index += 1) {
    const here = axis((furthest * index) / PLACES);
    if (here < before - NEARER) return true;
    before = here;
  }
  return false;
}

/** Whether the inner surface or the line to cut to jumps somewhere between two lines. */
function isTorn(head: SaddleCut, inner: Contacts, outer: Contacts): boolean {
  const within = (turned: number): number | undefined => saddleReach(head.seat, head.inner, turned);
  const cut = (turned: number): number | undefined => {
    const one = within(turned);
    return one === undefined ? undefined : Math.max(one, saddleReach(head.seat, head.outer, turned) ?? one);
  };
  const cuts = inner.map((one, index) => (one === undefined ? undefined : Math.max(one, outer[index] ?? one)));
  const least = TORN * head.seat.mainRadius;
  return inner.some((_, index) => jumps(within, inner, index, least) || jumps(cut, cuts, index, least));
}

/** Whether a step from one line to the next stays a step, however near to each other they are taken. */
function jumps(at: (turned: number) => number | undefined, known: Contacts, index: number, least: number): boolean {
  let [low, high] = [index * TURN, (index + 1) * TURN];
  let [lowValue, highValue] = [known[index], known[(index + 1) % ROUND]];
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    if (lowValue === undefined || highValue === undefined) return true;
    if (Math.abs(highValue - lowValue) <= least) return false;
    const middle = (low + high) / 2;
    const value = at(middle);
    if (value === undefined) return true;
    if (Math.abs(value - lowValue) > Math.abs(highValue - value)) [high, highValue] = [middle, value];
    else [low, lowValue] = [middle, value];
  }
  return true;
}

/** Between two lines that were followed [mm]; undefined beside one that misses the tube. */
function between(contacts: Contacts, turned: number): number | undefined {
  const place = turned / TURN;
  const index = Math.floor(place);
  const share = place - index;
  const at = (one: number): number | undefined => contacts[((one % ROUND) + ROUND) % ROUND];
  const [low, high] = [at(index), at(index + 1)];
  return low === undefined || high === undefined ? undefined : low + share * (high - low);
}
