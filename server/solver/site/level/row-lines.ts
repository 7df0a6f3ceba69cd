import type { NamedDirection } from '../../../job/site.ts';
import type { LevelRow } from '../../../plan/site.ts';
import { subtract, unit, type Vector3 } from '../../geometry/vector.ts';
import type { LaidSite, MadeLine, Off, SiteDoubt, SiteSource } from '../laid-site.ts';
import { directionDoubts, directionOf } from './directions.ts';
import { laidContext } from './laid-context.ts';

/** A line of the site that a level can be held to, on any laying of it; what is doubtful of the line alone. */
export type RowLine = Pick<LevelRow, 'of' | 'name' | 'field'> & {
  readonly directionOn: (laid: LaidSite, off: Off) => Vector3 | undefined;
  readonly doubts: readonly SiteDoubt[];
};

/** Typed directions, legs from foot to head, round things, straight tubes of the frame, the hinge: in this order. */
export const rowLines = (source: SiteSource, laid: LaidSite): RowLine[] => [
  ...source.site.directions.map((one, index) => typedLine(source, one, `/site/directions/${index}`)),
  ...source.site.legs.map(({ name }, index) =>
    line({ of: 'leg', name, field: `/site/legs/${index}` }, (site) => {
      const leg = site.legs[index];
      return leg ? unit(subtract(leg.head, leg.foot)) : undefined;
    }),
  ),
  ...source.site.things.flatMap(({ name, shape }, index) =>
    shape.shape === 'cylinder'
      ? [line({ of: 'thing', name, field: `/site/things/${index}` }, (site) => axisOf(site, index))]
      : [],
  ),
  ...(laid.frame?.lines ?? []).flatMap((made, index) =>
    isStraight(made)
      ? [line({ of: 'member', name: made.name, field: '' }, (site) => firstWay(site.frame?.lines[index]))]
      : [],
  ),
  ...(laid.frame?.hinge ? [line({ of: 'hinge', name: '', field: '' }, (site) => site.frame?.hinge?.axis)] : []),
];

const line = (
  about: Pick<LevelRow, 'of' | 'name' | 'field'>,
  directionOn: (laid: LaidSite) => Vector3 | undefined,
): RowLine => ({ ...about, directionOn, doubts: [] });

/** A direction that a level read off plumb has the accuracy of that level; no part of the site rests on it. */
function typedLine(source: SiteSource, { name, direction }: NamedDirection, field: string): RowLine {
  const pointer = `${field}/direction`;
  return {
    of: 'direction',
    name,
    field,
    directionOn: (laid, off) => {
      const told = directionOf(direction, pointer, laidContext(laid, source, off));
      return 'direction' in told ? told.direction : undefined;
    },
    doubts: directionDoubts(direction, pointer, source.site.level.angleAccuracy).map((doubt) => ({
      ...doubt,
      from: 'level',
      name: '',
    })),
  };
}

function axisOf({ things }: LaidSite, index: number): Vector3 | undefined {
  const body = things[index]?.body;
  return body?.shape === 'cylinder' ? body.axis : undefined;
}

/** A bent member has no one direction: what it runs along where is a typed direction, along the tube. */
const isStraight = ({ centreline }: MadeLine): boolean =>
  centreline.pieces.length > 0 && centreline.pieces.every(({ kind }) => kind === 'straight');

const firstWay = (made: MadeLine | undefined): Vector3 | undefined => made?.centreline.pieces[0]?.direction;
