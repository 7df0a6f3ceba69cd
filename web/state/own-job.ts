import type { Frame } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { Machine } from '../../server/job/machine.ts';

/** The four things that a first plan needs [mm]. `across` and `along` mean what the shape makes of them. */
export type FirstSizes = {
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

function frameOf(fresh: Frame, { across, along }: FirstSizes): Frame {
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

/** The machine of a new job with its die for the tube and the radius that were typed. */
const machineOf = (machine: Machine, { outsideDiameter, dieRadius }: FirstSizes): Machine => ({
  ...machine,
  dies: machine.dies.map((die, index) =>
    index === machine.die ? { ...die, tubeDiameter: outsideDiameter, radius: dieRadius } : die,
  ),
});

/** A shop's own first job: a new job of its shape with the sizes that were typed. */
export const ownJob = (fresh: Job, sizes: FirstSizes): Job => ({
  ...fresh,
  units: { ...fresh.units, length: sizes.length },
  tube: { ...fresh.tube, outsideDiameter: sizes.outsideDiameter, wall: sizes.wall },
  machine: machineOf(fresh.machine, sizes),
  frame: frameOf(fresh.frame, sizes),
});
