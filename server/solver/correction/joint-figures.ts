import { DEGREES } from '../geometry/angle.ts';
import type { CutClosing } from '../../job/closing.ts';
import type { Joint } from '../../plan/joint.ts';
import type { Band } from '../../plan/figure.ts';
import { figure, input } from '../figure.ts';
import type { CutJoint } from './cut-joint.ts';
import type { Lean } from './joint-face.ts';
import type { ScrapSides } from './scrap-sides.ts';

/** ± of what is taken out at a joint and of how it closes. */
export type JointBands = { readonly removed: Band; readonly kink: Band | null; readonly hiLo: Band };

type Figures = Pick<Joint, 'removed' | 'scrap' | 'scrapShort' | 'kink' | 'hiLo' | 'twist'>;

/** What is taken out at a joint, what falls out of it, and how well it closes. */
export function jointFigures(
  joint: CutJoint,
  { first, second, sides }: { first: Lean; second: Lean; sides: ScrapSides },
  closing: CutClosing,
  bands: JointBands,
): Figures {
  const { stationA, stationB, meetsA, meetsB } = joint;
  const removed = stationB - stationA;
  const [a, b] = [input('a', 'station-a', meetsA, 'mm'), input('b', 'station-b', meetsB, 'mm')];
  // both kerfs fall into the scrap; along the tube a leaning saw takes k / cos τ
  const saws = closing.kerf / Math.cos(first.tilt) + closing.kerf / Math.cos(second.tilt);
  const scrap = (width: number, name: string) =>
    figure(
      Math.max(0, width - saws),
      'mm',
      'c = w − k / cos τ_A − k / cos τ_B',
      [
        input('w', name, width, 'mm'),
        input('k', 'kerf', closing.kerf, 'mm'),
        input('τ_A', 'face-tilt', first.tilt * DEGREES, 'deg'),
        input('τ_B', 'face-tilt', second.tilt * DEGREES, 'deg'),
      ],
      ['geometry'],
      bands.removed,
    );
  return {
    removed:
      joint.letIn === null
        ? figure(
            removed,
            'mm',
            'L = Δ + g − s',
            [
              input('Δ', 'shortening', meetsB - meetsA, 'mm'),
              input('g', 'gap', closing.gap, 'mm'),
              input('s', 'shrinkage', closing.shrinkage, 'mm'),
            ],
            ['geometry'],
            bands.removed,
          )
        : figure(
            removed,
            'mm',
            'L = b − a',
            [input('a', 'station-a', stationA, 'mm'), input('b', 'station-b', stationB, 'mm')],
            ['geometry'],
            bands.removed,
          ),
    scrap: scrap(sides.long, 'width-at-long-side'),
    scrapShort: scrap(sides.short, 'width-at-short-side'),
    kink: figure(joint.kink * DEGREES, 'deg', 'k = ∠(C′(a), M C′(b))', [a, b], ['geometry'], bands.kink),
    hiLo: figure(
      joint.hiLo,
      'mm',
      'e = |M C(b) − C(a)| across',
      [a, b],
      ['geometry', 'iso-5817', 'asme-bpe'],
      bands.hiLo,
    ),
    twist: figure(joint.twist * DEGREES, 'deg', 'ω = turn of M about C′(b)', [b], ['geometry']),
  };
}
