import type { Doubt } from '../../plan/leg.ts';

type DoubtKey = Doubt['from'] | 'foot' | 'surface' | 'point-named' | 'thing-named';

/** Whether a value typed with a leg is of where it stands or of what it stands on; neither is a point or a thing of the site. */
const underLeg = (field: string): 'foot' | 'surface' | undefined => {
  const [, part] = /^\/site\/legs\/\d+\/foot\/(at|surface)/.exec(field) ?? [];
  return part === undefined ? undefined : part === 'at' ? 'foot' : 'surface';
};

/** What a part of a band comes from, as a person would point at it; `doubt.<key>` of the language catalogue has the words. */
export const doubtKey = ({ from, name, field }: Pick<Doubt, 'from' | 'name' | 'field'>): DoubtKey =>
  name === '' ? from : (underLeg(field) ?? (from === 'point' || from === 'thing' ? `${from}-named` : from));

/** The same for the names under a band: `band.<key>`. */
export const bandKey = ({ from, field }: Pick<Doubt, 'from' | 'field'>): string => `site-${underLeg(field) ?? from}`;
