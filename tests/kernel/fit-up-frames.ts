import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { frameModel } from '../../server/solver/returned/frame-model.ts';
import { frameMaker } from '../../server/solver/returned/frame-of-lines.ts';
import { layFrame } from '../../server/solver/returned/lay-frame.ts';
import type { Parameter } from '../../server/solver/returned/parameters.ts';
import { sizesOf } from '../../server/solver/returned/sizes.ts';
import { hoop, ladder, offset, ring, round, run, stand, TUBE, type HoopSizes, type Triple } from './fit-up-shapes.ts';

/** A frame as it was wanted and as it came back. */
export type MadeUpFrame = { readonly name: string; readonly wanted: FrameGeometry; readonly actual: FrameGeometry };

/** Numbers from 0 to 1, the same every time: Park & Miller's generator, Comm. ACM 31 (1988) 1192. */
function uniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

const DEGREE = Math.PI / 180;

/** How far off a frame may have come back, ± [mm, rad]: what a careless bender manages. */
const OFF_BY: Record<Parameter['what'], number> = {
  length: 9,
  angle: 1.2 * DEGREE,
  bow: 0.4 * DEGREE,
  rotation: 1.5 * DEGREE,
  radius: 0,
  'along-partner': 6,
  'out-of-level': 4,
  'turn-x': 0.8 * DEGREE,
  'turn-y': 0.8 * DEGREE,
  'turn-z': 0.8 * DEGREE,
  'shift-x': 6,
  'shift-y': 6,
  'shift-z': 6,
};

/** A frame with random deviations. Closed members keep their sizes: they would not close any more. */
function off(frame: FrameGeometry, seed: number, inSpace: boolean): FrameGeometry {
  const model = frameModel(frame, {
    flat: !inSpace,
    scatter: { angle: 0.01, plane: 0.01, length: 1 },
    freeRadii: new Map(),
  });
  if (model === undefined) throw new Error('a frame without members');
  const next = uniform(seed);
  for (let skipped = 0; skipped < 5; skipped += 1) next();
  const values = model.parameters.map(({ what, member }) => {
    const share = 2 * next() - 1;
    return frame.members[member]?.closed === true ? 0 : share * OFF_BY[what];
  });
  const lines = layFrame(model, values).map(({ line }) => line);
  return frameMaker(frame, sizesOf(frame, TUBE.outsideDiameter))(lines, model.flat);
}

const HOOP: HoopSizes = { width: 950, legs: [700, 700], bars: [] };
const CROWNED: HoopSizes = { width: 950, legs: [700, 700], crown: 2400, bars: [] };
const ROUND_CROWN: HoopSizes = { width: 1000, legs: [650, 650], crown: 1100, bars: [] };

const like = (name: string, wanted: FrameGeometry, back: FrameGeometry): MadeUpFrame => ({
  name,
  wanted,
  actual: back,
});

/** Ten frames that lie in one plane and came back in it. */
export const inPlane = (): MadeUpFrame[] => [
  like('hoop, wider', hoop(HOOP), off(hoop({ ...HOOP, width: 982 }), 101, false)),
  like('crowned hoop, narrower', hoop(CROWNED), off(hoop({ ...CROWNED, width: 905 }), 211, false)),
  like(
    'hoop with three crossbars, splayed',
    hoop({ ...HOOP, bars: [140, 300, 460] }),
    hoop({ ...HOOP, width: 968, feet: 986, bars: [140, 300, 460] }),
  ),
  like(
    'crowned hoop with two crossbars, wider and splayed',
    hoop({ ...CROWNED, bars: [150, 380] }),
    hoop({ ...CROWNED, width: 990, feet: 1000, bars: [150, 382] }),
  ),
  like('round crown, wider', hoop(ROUND_CROWN), off(hoop({ ...ROUND_CROWN, width: 1040 }), 307, false)),
  like('ring, wider', ring(900, 600), ring(931, 600)),
  like('ring, narrower', ring(900, 600), ring(862, 606)),
  like('offset', offset(300, 400), off(offset(318, 412), 401, false)),
  like('ladder, wider', ladder(500, 0), off(ladder(526, 0), 503, false)),
  like(
    'hoop with a crossbar, narrower at the feet',
    hoop({ ...HOOP, bars: [240] }),
    off(hoop({ ...HOOP, feet: 940, width: 930, bars: [240] }), 601, false),
  ),
];

const RUN_1: Triple[] = [
  [0, 0, 0],
  [800, 0, 0],
  [800, 700, 200],
  [300, 1000, 900],
  [300, 1700, 900],
];
const RUN_2: Triple[] = [
  [0, 0, 0],
  [0, 600, 100],
  [500, 900, 300],
  [1100, 900, -100],
  [1400, 300, -200],
  [1500, -300, 300],
];
const RUN_3: Triple[] = [
  [0, 0, 0],
  [700, 0, 0],
  [700, 650, 0],
  [700, 650, 700],
];

/** Ten frames that came back in space. */
export const inSpace = (): MadeUpFrame[] => [
  like('run of three bends', run(...RUN_1), off(run(...RUN_1), 1009, true)),
  like('run of four bends', run(...RUN_2), off(run(...RUN_2), 1103, true)),
  like('run of two square bends', run(...RUN_3), off(run(...RUN_3), 1201, true)),
  like('hoop, twisted', hoop(HOOP), off(hoop({ ...HOOP, width: 975 }), 1301, true)),
  like('crowned hoop, twisted', hoop(CROWNED), off(hoop({ ...CROWNED, width: 980 }), 1409, true)),
  like('crowned hoop, narrower and twisted', hoop(CROWNED), off(hoop({ ...CROWNED, width: 900 }), 1511, true)),
  like(
    'hoop with two crossbars, twisted',
    hoop({ ...HOOP, bars: [180, 420] }),
    off(hoop({ ...HOOP, width: 970, bars: [180, 420] }), 1601, true),
  ),
  like('stand, wider', stand(700), off(stand(722), 1709, true)),
  like('ladder, twisted', ladder(500, 0), off(ladder(520, 14), 1801, true)),
  like('round, twisted', round([930, 680], 0), round([948, 690], 16)),
];
