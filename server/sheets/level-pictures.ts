import type { Job } from '../job/job.ts';
import { formatLength } from '../language/length-format.ts';
import { words } from '../language/words.ts';
import type { SiteView } from '../plan/site-view.ts';
import type { SitePlan } from '../plan/site.ts';
import { HEIGHTS } from './ink.ts';
import type { Scale } from './scale.ts';
import { sitePicture, siteScale, type SiteSelection } from './site-picture.ts';
import { seenFrom } from './site-seen.ts';
import { beside, paragraph, space, stacked, type Block } from './text-block.ts';

/** Air between two pictures, and what a caption takes [mm]. */
const AIR = 4;
const CAPTION = 4.5;

type Room = { readonly width: number; readonly height: number };

/** Both views in which one can see what is level, at one scale: beside or under one another, whichever is larger. */
export function levelPictures({ views }: SitePlan, job: Job, room: Room): Block {
  const drawn = views.filter(({ key }) => key === 'from-starboard' || key === 'from-back');
  if (drawn.length === 0) return space(0);
  const count = drawn.length;
  const across: Room = { width: (room.width - AIR * (count - 1)) / count, height: room.height - CAPTION };
  const down: Room = { width: room.width, height: (room.height - AIR * (count - 1)) / count - CAPTION };
  const what = selection(job);
  const common = (each: Room): Scale =>
    drawn.map((view) => siteScale(view, what, each)).reduce((least, one) => (one.factor < least.factor ? one : least));
  const [aside, under] = [common(across), common(down)];
  const stack = under.factor > aside.factor;
  const [each, scale] = stack ? [down, under] : [across, aside];
  const blocks = drawn.map((view) => captioned(view, scale, job, each));
  return stack
    ? stacked(blocks.flatMap((block, index) => (index === 0 ? [block] : [space(AIR), block])))
    : beside(blocks.map((block, index) => ({ left: index * (each.width + AIR), block })));
}

const selection = ({ units }: Job): SiteSelection => ({
  leg: null,
  startOf: null,
  named: true,
  gap: (value) => formatLength(value, units),
  level: words('sheet.level-line'),
});

function captioned(view: SiteView, scale: Scale, job: Job, each: Room): Block {
  const caption = `${seenFrom(view, job)}, ${words('sheet.scale-is', { scale: scale.text })}`;
  return stacked([
    paragraph(caption, each.width, { height: HEIGHTS.small }),
    sitePicture(view, selection(job), { ...each, scale }),
  ]);
}
