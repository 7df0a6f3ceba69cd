import type { WeldForm } from '../../server/job/welding.ts';
import type { WeldSite } from '../../server/solver/welding/weld-sites.ts';

const KINDS = { butt: 'splice', saddle: 'saddle', pad: 'pad' } as const;

/** A weld of a form, somewhere on a tube. */
export const weldSite = (name: string, form: WeldForm): WeldSite => ({
  name,
  kind: KINDS[form],
  form,
  joint: form === 'butt' ? 1 : 0,
  member: 'main',
  station: 100,
  point: { x: 100, y: 0, z: 0 },
  end: form === 'butt' ? null : 'start',
  onto: form === 'butt' ? '' : 'other',
  ontoStation: 0,
  plate: form === 'pad' ? { thickness: 6, hole: 0 } : null,
});
