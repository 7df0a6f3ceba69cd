import type { Job } from '../job/job.ts';
import { fieldName } from '../language/field-name.ts';
import { quantityParts } from '../language/quantity-format.ts';
import { fixed, INCH } from '../language/length-format.ts';
import { tellingResiduals } from '../language/site-rules.ts';
import { words } from '../language/words.ts';
import type { Figure } from '../plan/figure.ts';
import type { SitePointPlan, SiteResidual } from '../plan/site.ts';
import { residualWords } from './level-lies.ts';
import { sideWords } from './site-words.ts';
import { table, type Cell, type Table } from './table.ts';

/** Where each point lies in the structure's axes, how sure that is, and what its distances are off by. */
export function pointTable(points: readonly SitePointPlan[], job: Job, width: number): Table {
  const { units } = job;
  const unit = units.length === 'mm' ? 'mm' : 'in';
  const bare = ({ value }: Figure): string => quantityParts(value, 'mm', units).number;
  const sure = ({ band }: Figure): string =>
    band === null ? '—' : units.length === 'mm' ? fixed(band.plusMinus, 1) : fixed(band.plusMinus / INCH, 3);
  const head = (axis: string, side: string): string => `${axis} ${side}, ${unit}`;
  return table(
    [
      { head: words('sheet.site-point'), align: 'left' },
      { head: head('x', sideWords(job, 'ahead')), align: 'right' },
      { head: head('y', sideWords(job, 'port')), align: 'right' },
      { head: head('z', sideWords(job, 'up')), align: 'right' },
      ...['x', 'y', 'z'].map((axis) => ({ head: `± ${axis}`, align: 'right' as const })),
    ],
    points
      .map((point) => ({ ...point, off: tellingResiduals(point.residuals) }))
      .flatMap(({ name, x, y, z, off }): Cell[][] => [
        [{ text: name, weight: 600 }, bare(x), bare(y), bare(z), sure(x), sure(y), sure(z)],
        ...(off.length === 0
          ? []
          : [
              [
                '',
                {
                  text: words('sheet.point-residuals', {
                    list: off.map((one) => `${measuredFrom(one, job)} ${residualWords(one, job)}`).join('; '),
                  }),
                  weight: off.some(({ disagrees }) => disagrees) ? 600 : 400,
                  span: true,
                } as const,
              ],
            ]),
      ]),
    { width, height: 2.1 },
  );
}

const DISTANCE = /^\/site\/points\/(\d+)\/at\/distances\/(\d+)\//;

/** From which point a distance was measured; the field's own name where it is none. */
function measuredFrom({ field }: SiteResidual, { site }: Job): string {
  const [, point, distance] = DISTANCE.exec(field) ?? [];
  const at = point === undefined ? undefined : site.points[Number(point)]?.at;
  const from = at?.by === 'distances' ? at.distances[Number(distance)]?.from : undefined;
  return from === undefined ? fieldName(field) : words('sheet.distance-from', { name: from });
}
