import { words } from '../../server/language/words.ts';
import type { Weld } from '../../server/plan/welding.ts';

/** What a weld is: 'splice', 'saddle on hoop', 'pad on left foot'. */
export function kindWords({ kind, onto }: Pick<Weld, 'kind' | 'onto'>): string {
  const said = words(`weld.kind.${kind}`);
  return onto === '' ? said : words('weld.onto', { kind: said, onto });
}
