import type { Frame } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import { freshFrame } from './fresh-rows.ts';

/** The four things that a first plan needs [mm]. `across` and `along` mean what the shape makes of them. */
export type FirstSizes = {
  readonly shape: Frame['shape'];
  readonly outsideDiameter: number;
  readonly wall: number;
  readonly dieRadius: number;
  readonly across: number;
  readonly along: number;
  /** The unit that the sizes were typed in. */
  readonly length: Job['units']['length'];
};

/** Which of the two sizes a shape asks for, by the field whose name stands beside it. */
export const SIZES_OF: Readonly<Record<Frame['shape'], { readonly across: string; readonly along: string }>> = {
  hoop: { across: '/frame/width', along: '/frame/leftLeg' },
  ring: { across: '/frame/width', along: '/frame/height' },
  offset: { across: '/frame/across', along: '/frame/first' },
  straight: { across: '', along: '/frame/length' },
  run: { across: '', along: '' },
  members: { across: '', along: '' },
};

function frameOf({ shape, across, along }: FirstSizes): Frame {
  const fresh = freshFrame(shape);
  const outside = (value: number) => ({ value, reference: 'outside' as const });
  switch (fresh.shape) {
    case 'hoop':
      return { ...fresh, width: outside(across), leftLeg: outside(along), rightLeg: outside(along) };
    case 'ring':
      return { ...fresh, width: outside(across), height: outside(along) };
    case 'offset':
      return { ...fresh, across: outside(across), first: outside(along), last: outside(along) };
    case 'straight':
      return { ...fresh, length: along };
    case 'run':
    case 'members':
      return fresh;
  }
}

/**
 * A shop's own first job: the example's settings for things nobody has asked about yet, and nothing of what the
 * example made up: no name, no rate, no time, no test bend.
 */
export function ownJob(example: Job, sizes: FirstSizes): Job {
  const nothing = { setUp: null, each: null };
  return {
    ...example,
    title: '',
    customer: '',
    drawingNumber: '',
    note: '',
    invented: false,
    asTyped: {},
    units: { ...example.units, length: sizes.length },
    tube: { ...example.tube, outsideDiameter: sizes.outsideDiameter, wall: sizes.wall },
    machine: { ...example.machine, name: '', dieRadius: sizes.dieRadius, springback: { method: 'theory' } },
    frame: frameOf(sizes),
    cameBack: null,
    closing: { ...example.closing, way: null },
    purge: { ...example.purge, feed: null, vent: null },
    rates: {
      ...example.rates,
      date: '',
      tubePerMetre: null,
      gasPerCubicMetre: null,
      fillerPerKilogram: null,
      labourPerHour: { bend: null, cut: null, fit: null, purge: null, weld: null, finish: null },
      times: { bend: nothing, cut: nothing, fit: nothing, purge: nothing, weld: nothing, finish: nothing },
    },
  };
}
