import type { Figure } from '../../../plan/figure.ts';
import { figure, input } from '../../figure.ts';
import { DEGREES } from '../../geometry/angle.ts';
import type { LaidFrame } from '../laid-site.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';

/** What the frame was turned by from how it was placed [degrees]: about its hinge, right-handed, or by the least turn. */
export function turnFigure(study: SiteStudy, frame: LaidFrame): Figure {
  const { slopes, height } = study.source.site.standing;
  const [one, two] = slopes;
  const slope = (symbol: string, angle: number) => input(symbol, 'slope', angle, 'deg');
  const [formula, inputs] =
    frame.hinge === null
      ? one !== undefined && two !== undefined
        ? ([
            'θ → min, R d₁ · v₁ = sin a₁, R d₂ · v₂ = sin a₂',
            [slope('a₁', one.angle), slope('a₂', two.angle)],
          ] as const)
        : (['θ = |a − arcsin(d · v)|', [slope('a', one?.angle ?? 0)]] as const)
      : one === undefined
        ? (['A + B cos θ + C sin θ = h', [input('h', 'height', height?.value ?? 0, 'mm')]] as const)
        : (['A + B cos θ + C sin θ = sin a', [slope('a', one.angle)]] as const);
  const band = siteBand(study, ({ frame: laid }) => (laid === null ? undefined : laid.turn * DEGREES));
  return figure(frame.turn * DEGREES, 'deg', formula, inputs, ['standing-turn'], band);
}
