import type { SiteDoubt, SiteSource } from './laid-site.ts';
import { legDoubts } from './legs/leg-doubts.ts';
import { levelDoubts } from './level/level-doubts.ts';
import { madeDoubts } from './made-doubts.ts';
import { pointDoubts } from './points/point-doubts.ts';
import { thingDoubts } from './points/thing-doubts.ts';
import { placingDoubts } from './standing/placing-doubts.ts';

/** Every measured value that the site rests on, with its accuracy. */
export const siteDoubts = (source: SiteSource): SiteDoubt[] => [
  ...levelDoubts(source.site),
  ...pointDoubts(source.site),
  ...thingDoubts(source.site),
  ...placingDoubts(source.site),
  ...legDoubts(source.site),
  ...madeDoubts(source),
];
