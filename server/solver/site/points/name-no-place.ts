import type { Site } from '../../../job/site.ts';
import type { Finding } from '../../../plan/finding.ts';

/**
 * A name that leads nowhere is either no name of the site, or that of a point or a thing whose place cannot be told. The
 * second is said in words of its own, since there is nothing wrong with the name.
 */
export function namedHere(told: Finding, site: Pick<Site, 'points' | 'things'>): Finding {
  if (told.code !== 'site-name-missing') return told;
  const { name } = told.data;
  const part = told.field.split('/').at(-1);
  const among =
    part === 'on'
      ? site.things.filter(({ shape }) => shape.shape === 'plane')
      : part === 'thing'
        ? site.things.filter(({ shape }) => shape.shape !== 'point')
        : site.points;
  return among.some((one) => one.name === name) ? { ...told, code: 'site-name-no-place' } : told;
}
