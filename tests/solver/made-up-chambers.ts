import type { Chamber, GasSpot, PurgeTime } from '../../server/plan/purge.ts';
import type { Weld } from '../../server/plan/welding.ts';
import { made, vector } from './made-up-ways.ts';

const time: PurgeTime = { volumes: made(8, 'ratio'), time: made(60, 's'), gas: made(10, 'L') };

export const gasSpot = (kind: GasSpot['kind'], member: string, station: number): GasSpot => ({
  kind,
  member,
  station,
  point: vector(0, 0, 0),
  bore: 6,
  name: '',
  height: 0,
});

/** A chamber with nothing in it but what is given. */
export const chamberOf = (given: Partial<Chamber> & Pick<Chamber, 'feed'>): Chamber => ({
  number: 1,
  setup: 1,
  stretches: [],
  welds: [],
  volume: made(1, 'L'),
  length: made(1000),
  plug: time,
  longTube: null,
  wellMixed: time,
  printed: time,
  vents: [],
  rise: made(0),
  taped: [],
  dams: [],
  plugs: [],
  pluggedHoles: [],
  ventShares: [],
  paths: [],
  deadLegs: [],
  ...given,
});

/** A weld of a cut joint; whatever else it is may be given. */
export const weldOf = (name: string, given: Partial<Weld> = {}): Weld => ({
  name,
  kind: 'splice',
  form: 'butt',
  joint: 0,
  member: 'hoop',
  station: 0,
  point: vector(0, 0, 0),
  onto: '',
  preparation: 'square-tight',
  gap: made(0),
  bevel: null,
  land: null,
  endAngle: made(0, 'deg'),
  squareness: made(0.2),
  backing: 'purge',
  length: made(114.5),
  position: { code: 'PH', american: '5G', steep: made(0, 'deg') },
  tacks: { count: made(3, 'count'), length: made(6), angles: [0, 120, 240] },
  misfit: null,
  runs: made(1, 'count'),
  arcTime: made(76, 's'),
  fillerLength: made(168),
  fillerMass: made(2.7, 'g'),
  shrinkage: made(0.5),
  symbol: {
    standard: 'iso-2553',
    elementary: 'square',
    allRound: true,
    flush: true,
    angle: null,
    gap: null,
    leg: null,
    process: '142',
  },
  ...given,
});
