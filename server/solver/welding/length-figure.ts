import type { Tube } from '../../job/tube.ts';
import type { Figure } from '../../plan/figure.ts';
import { figure, input } from '../figure.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { DEGREES } from '../geometry/angle.ts';
import type { WeldSite } from './weld-sites.ts';
import { seatOf } from './weld-work.ts';

/** Length of one weld with its working. */
export function lengthFigure(
  site: WeldSite,
  length: number,
  { tube, frame }: { readonly tube: Tube; readonly frame: FrameGeometry },
): Figure {
  const outside = input('D', 'outside-diameter', tube.outsideDiameter, 'mm');
  const thickness = input('t', 'wall', tube.wall, 'mm');
  switch (site.form) {
    case 'butt':
      return figure(length, 'mm', 'l = π (D − t)', [outside, thickness], ['geometry']);
    case 'pad':
      return figure(length, 'mm', 'l = π D', [outside], ['geometry']);
    case 'saddle': {
      const { axisAngle, offset } = seatOf(site, frame.members);
      return figure(
        length,
        'mm',
        'l = ∮ √(r² + z′²) dφ, r = (D − t)/2, z = (r cos φ cos β + √(R² − (e + r sin φ)²))/sin β, R = D/2',
        [
          outside,
          thickness,
          input('β', 'axis-angle', axisAngle * DEGREES, 'deg'),
          input('e', 'offset-of-axes', offset, 'mm'),
        ],
        ['geometry'],
      );
    }
  }
}
