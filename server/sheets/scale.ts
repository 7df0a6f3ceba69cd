/** Standard scales of ISO 5455, as paper over full size. */
const SCALES: readonly { readonly factor: number; readonly text: string }[] = [
  { factor: 5, text: '5:1' },
  { factor: 2, text: '2:1' },
  { factor: 1, text: '1:1' },
  { factor: 1 / 2, text: '1:2' },
  { factor: 1 / 5, text: '1:5' },
  { factor: 1 / 10, text: '1:10' },
  { factor: 1 / 20, text: '1:20' },
  { factor: 1 / 50, text: '1:50' },
  { factor: 1 / 100, text: '1:100' },
  { factor: 1 / 200, text: '1:200' },
  { factor: 1 / 500, text: '1:500' },
  { factor: 1 / 1000, text: '1:1000' },
];

export type Scale = { readonly factor: number; readonly text: string };

const SMALLEST: Scale = { factor: 1 / 1000, text: '1:1000' };

/** The largest standard scale for which `fits` holds, no larger than `atMost`. */
export const largestScale = (fits: (factor: number) => boolean, atMost = 1): Scale =>
  SCALES.find(({ factor }) => factor <= atMost && fits(factor)) ?? SMALLEST;

/** Scales between the standard ones, which ISO 5455 leaves to those who need them (from memory). */
const BETWEEN: readonly Scale[] = [2.5, 4, 15, 25, 40, 150, 250, 400].map((times) => ({
  factor: 1 / times,
  text: `1:${String(times)}`,
}));

/** As `largestScale`, with scales between the standard ones, for a picture that must be as big as its page allows. */
export const largestOfAll = (fits: (factor: number) => boolean): Scale =>
  [...SCALES, ...BETWEEN]
    .filter(({ factor }) => factor <= 1)
    .toSorted((one, other) => other.factor - one.factor)
    .find(({ factor }) => fits(factor)) ?? SMALLEST;
