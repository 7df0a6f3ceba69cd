import type { Job } from '../job/job.ts';
import { formatLength } from '../language/length-format.ts';
import { words } from '../language/words.ts';
import type { LegPlan } from '../plan/leg.ts';
import type { SiteView } from '../plan/site-view.ts';
import { HEIGHTS } from './ink.ts';
import type { Scale } from './scale.ts';
import { sitePicture, siteScale, type SiteSelection } from './site-picture.ts';
import { seenFrom } from './site-seen.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';
import { drawnLength } from './view-places.ts';

const SIDEWAYS: readonly SiteView['key'][] = ['from-starboard', 'from-back'];

type Room = { readonly width: number; readonly height: number };

/** The view of the site in which a leg is seen longest. */
function viewOf(leg: LegPlan, views: readonly SiteView[]): SiteView | undefined {
  const length = (view: SiteView): number =>
    drawnLength(view.legs.find(({ field }) => field === leg.field)?.centreline ?? []);
  const [view] = views
    .filter(({ key }) => SIDEWAYS.includes(key))
    .toSorted((one, other) => length(other) - length(one));
  return view;
}

const selection = (leg: LegPlan, { units }: Job): SiteSelection => ({
  leg: leg.field,
  startOf: leg.head.member,
  named: false,
  gap: (value) => formatLength(value, units),
  level: words('sheet.level-line'),
});

const captionOf = (view: SiteView, scale: string, job: Job, width: number): Block =>
  paragraph(`${seenFrom(view, job)}, ${words('sheet.scale-is', { scale })}`, width, { height: HEIGHTS.small });

/** What is left of a room under the caption of its picture, which may need a second line. */
const underCaption = (view: SiteView, job: Job, { width, height }: Room): Room => ({
  width,
  height: height - captionOf(view, '1:1000', job, width).height,
});

/** The largest scale at which a leg fits a room among the rest of the site; undefined where nothing of it is drawn. */
export function amongScale(leg: LegPlan, views: readonly SiteView[], job: Job, room: Room): Scale | undefined {
  const view = viewOf(leg, views);
  return view === undefined ? undefined : siteScale(view, selection(leg, job), underCaption(view, job, room));
}

/** The site from the side from which this leg is seen longest, the leg thick, a dot at the start of the tube of its head. */
export function legAmong(
  leg: LegPlan,
  views: readonly SiteView[],
  job: Job,
  room: Room & { readonly scale: Scale },
): Block {
  const view = viewOf(leg, views);
  if (view === undefined) return space(0);
  const drawn = sitePicture(view, selection(leg, job), { ...underCaption(view, job, room), scale: room.scale });
  return stacked([captionOf(view, room.scale.text, job, room.width), drawn]);
}
