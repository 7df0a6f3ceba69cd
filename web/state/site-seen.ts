import { words } from '../../server/language/words.ts';
import type { SiteView } from '../../server/plan/site-view.ts';
import type { LabelWords } from './site-labels.ts';

/** What a view of the site shows, for somebody who does not see it. */
export function siteSeen(view: SiteView, said: LabelWords, from: string): string {
  const list = (names: readonly string[]): string => [...new Set(names)].join(', ');
  const called = ({ field, name }: { readonly field: string; readonly name: string }): string =>
    said.called(field, name);
  const standing = view.things.filter(({ swung, lines }) => !swung && lines.length > 0);
  const parts = [
    ['siteView.seen.frame', view.members.map(({ member }) => member)],
    ['siteView.seen.legs', view.legs.map(({ field, member }) => said.called(field, member))],
    ['siteView.seen.points', view.points.map(called)],
    ['siteView.seen.things', standing.map(called)],
    [
      'siteView.seen.gaps',
      view.gaps.map(({ field, thing, value }) =>
        words('siteView.seen.gap', { gap: said.gap(value), name: said.called(field, thing) }),
      ),
    ],
  ] as const;
  return [
    words('siteView.label', { view: from }),
    ...parts.flatMap(([key, names]) => (names.length === 0 ? [] : [words(key, { names: list(names) })])),
    ...(view.hinge === null ? [] : [words('siteView.seen.hinge')]),
    ...(view.level === null ? [] : [words('siteView.seen.level')]),
  ].join('. ');
}
