import type { Frame } from '../../job/frame.ts';
import type { Dimension, Reference } from '../../job/quantities.ts';
import type { SlipKey } from '../../plan/slip.ts';

const REFERENCES: readonly Reference[] = ['outside', 'centre', 'inside'];

/** Sizes of a sketch that one look reads wrong together, and what the frame becomes. */
export type ReadOtherwise = {
  readonly slip: SlipKey;
  /** JSON pointers of the sizes. */
  readonly fields: readonly string[];
  /** The sketch with them read by the other reference. */
  readonly read: (frame: Frame) => Frame;
};

/**
 * Every typed size that has a reference, read by either other one: widths each by itself, the two legs of a hoop and the
 * two ends of an offset together where they are typed alike.
 */
export const readOtherwise = (frame: Frame): ReadOtherwise[] =>
  looksAt(frame).flatMap(({ names, reference }) =>
    REFERENCES.flatMap((other): ReadOtherwise[] => {
      const slip = SLIPS[reference][other];
      if (slip === undefined) return [];
      return [{ slip, fields: names.map((name) => `/frame/${name}`), read: (sketch) => readBy(sketch, names, other) }];
    }),
  );

const SLIPS: Readonly<Record<Reference, Partial<Record<Reference, SlipKey>>>> = {
  outside: { centre: 'outside-read-as-centre', inside: 'outside-read-as-inside' },
  centre: { outside: 'centre-read-as-outside', inside: 'centre-read-as-inside' },
  inside: { outside: 'inside-read-as-outside', centre: 'inside-read-as-centre' },
};

/** Sizes that are read in one look: JSON names, all with the same reference. */
type Look = { readonly names: readonly string[]; readonly reference: Reference };

const look = (size: Dimension, ...names: string[]): Look => ({ names, reference: size.reference });

/** Two sizes in one look where they are typed alike, else each by itself. */
const together = (one: [string, Dimension], other: [string, Dimension]): Look[] =>
  one[1].reference === other[1].reference
    ? [look(one[1], one[0], other[0])]
    : [look(one[1], one[0]), look(other[1], other[0])];

function looksAt(frame: Frame): Look[] {
  switch (frame.shape) {
    case 'hoop': {
      const { width, widthAtFeet, leftLeg, rightLeg } = frame;
      const feet = widthAtFeet === null ? [] : [look(widthAtFeet, 'widthAtFeet')];
      return [look(width, 'width'), ...feet, ...together(['leftLeg', leftLeg], ['rightLeg', rightLeg])];
    }
    case 'ring':
      return [look(frame.width, 'width'), look(frame.height, 'height')];
    case 'offset': {
      const { across, first, last } = frame;
      return [look(across, 'across'), ...together(['first', first], ['last', last])];
    }
    case 'straight':
    case 'run':
    case 'members':
      return [];
  }
}

const isDimension = (value: unknown): value is Dimension =>
  typeof value === 'object' && value !== null && 'reference' in value && 'value' in value;

/** The sketch with some of its sizes in another reference. */
function readBy(sketch: Frame, names: readonly string[], reference: Reference): Frame {
  const read: Record<string, Dimension> = {};
  for (const [name, size] of Object.entries(sketch))
    if (names.includes(name) && isDimension(size)) read[name] = { value: size.value, reference };
  return { ...sketch, ...read };
}
