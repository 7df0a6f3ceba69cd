import type { WeldTurn } from '../../server/job/welding.ts';
import type { Weld } from '../../server/plan/welding.ts';

/** Quarters are counted right-handed about the tube's run: the other way about, the last is the first. */
const WAY: Readonly<Record<WeldTurn['way'], WeldTurn['way']>> = {
  opposed: 'opposed-back',
  'opposed-back': 'opposed',
  round: 'round-back',
  'round-back': 'round',
};
const FIRST: Readonly<Record<WeldTurn['first'], WeldTurn['first']>> = { 1: 4, 2: 3, 3: 2, 4: 1 };

/** The letters before a name's number, the number, and the letter of a let-in's face after it. */
const NAME = /^([SCP]?)(\d+)([AB]?)$/;

/**
 * The names that the welds of a member have once it is counted from its other end: those of a kind are numbered along
 * it, so that the last is the first, and face A of a let-in piece is face B.
 */
function renamed(welds: readonly Weld[], member: string): ReadonlyMap<string, string> {
  const own = welds
    .filter((weld) => weld.member === member)
    .toSorted((one, other) => one.station - other.station)
    .flatMap(({ name }) => {
      const [, kind = '', number = '', face = ''] = NAME.exec(name) ?? [];
      return number === '' ? [] : [{ name, kind, number, face }];
    });
  return new Map(
    own.map(({ name, kind, number, face }) => {
      const numbers = [...new Set(own.filter((one) => one.kind === kind).map((one) => one.number))];
      // pads are numbered as their fixing points are listed, which stays
      const other = kind === 'P' ? number : (numbers.at(-1 - numbers.indexOf(number)) ?? number);
      return [name, `${kind}${other}${face === 'A' ? 'B' : face === 'B' ? 'A' : ''}`];
    }),
  );
}

/** An order of one's own in which the same quarters of the same welds follow each other when a tube is turned round. */
export function orderReversed(order: readonly WeldTurn[], welds: readonly Weld[], member: string): readonly WeldTurn[] {
  const names = renamed(welds, member);
  return order.map((turn) => {
    const weld = names.get(turn.weld);
    return weld === undefined ? turn : { weld, first: FIRST[turn.first], way: WAY[turn.way] };
  });
}
