import type { Job } from '../job/job.ts';
import { words } from '../language/words.ts';
import type { Finding } from '../plan/finding.ts';
import type { SitePlan } from '../plan/site.ts';
import { cautionFrame } from './cautions.ts';
import { Flow } from './flow.ts';
import { HEIGHTS } from './ink.ts';
import { gapTable } from './level-gaps.ts';
import { howItLies, levelSpare, readAgain } from './level-lies.ts';
import { levelPictures } from './level-pictures.ts';
import { pointTable } from './level-points.ts';
import { levelTable } from './level-rows.ts';
import { standingBlock } from './level-standing.ts';
import type { Drafts } from './page.ts';
import { stopFrame } from './set-up-page.ts';
import { findingBlocks, findingWords, type SheetInput } from './sheet-input.ts';
import { tableHeight } from './table.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';

/** Fields of the site that this sheet tells of; a leg has its own page. */
const PARTS = /^\/site(?!\/legs)(\/|$)/;

/** The pictures take what is left of the first page, within these [mm]. */
const PICTURES = { least: 70, most: 150 } as const;

/** Whether anybody has typed anything of the site that a level sheet could tell. */
const tells = ({ level, points }: SitePlan, { site }: Job): boolean =>
  level.known || points.length > 0 || site.directions.length > 0 || site.things.length > 0;

/** How the structure lies, what levels must show now, and where everything of the site is. */
export function levelSheet(input: SheetInput): Drafts {
  const { plan, job } = input;
  const { site } = plan;
  if (plan.frame === null) return { ok: false, reason: 'frame-not-possible' };
  if (site === null || !tells(site, job)) return { ok: false, reason: 'nothing-of-the-site' };
  const flow = new Flow(job.print.paper, 'upright');
  const { width } = flow;
  const head = (text: string): Block[] => [space(2), paragraph(text, width, { height: HEIGHTS.head, weight: 600 })];
  const found = plan.findings.filter(({ field }) => PARTS.test(field));
  const above = stacked([
    paragraph(words('sheet.level'), width, { height: HEIGHTS.title, weight: 600 }),
    ...stopFrame(
      found.filter(({ grade }) => grade === 'stop'),
      input,
      width,
    ),
    howItLies(site.level, job, width),
    readAgain(site.level, job, width),
    levelCautions(found, job, width),
  ]);
  const rows = levelTable(site.rows, job, width);
  const rowsHead = head(words('sheet.level-must-show'));
  flow.add(above);
  // a table that would leave the pictures no room begins the next page
  const left = flow.left - stacked(rowsHead).height - tableHeight(rows) - 8;
  const height = left >= PICTURES.least ? left : flow.left;
  flow.add(levelPictures(site, job, { width, height: Math.max(PICTURES.least, Math.min(PICTURES.most, height)) }));
  flow.addTable(rows, rowsHead, true);
  if (site.rows.some(({ differs }) => differs)) {
    flow.add(paragraph(words('sheet.level-differs-means'), width, { height: HEIGHTS.small }));
  }
  for (const block of levelSpare(site.level, job, width)) flow.add(block);
  if (site.points.length > 0) flow.addTable(pointTable(site.points, job, width), head(words('sheet.site-points')));
  if (site.gaps.length > 0) flow.addTable(gapTable(site.gaps, job, width), head(words('sheet.site-gaps')));
  if (site.standing !== null) {
    flow.addTogether([...head(words('sheet.site-standing')), standingBlock(site.standing, job, width)]);
  }
  const notes = findingBlocks(
    found.filter(({ grade }) => grade === 'note'),
    job,
    width,
  );
  if (notes.length > 0) flow.addTogether([...head(words('sheet.notes')), ...notes]);
  return { ok: true, drafts: flow.drafts() };
}

/** What was found that calls for caution, then what stands for every site, in a frame on the first page. */
function levelCautions(found: readonly Finding[], job: Job, width: number): Block {
  const own = found.filter(({ grade }) => grade === 'caution').map((one) => findingWords(one, job));
  const standing = [
    words(`sheet.level-caution-1.${job.site.sides}`),
    words('sheet.level-caution-2'),
    words('sheet.level-caution-3'),
  ];
  return stacked([
    cautionFrame(
      [
        ...[...new Set(own)].map((text) => ({ text, bold: true })),
        ...standing.map((text, index) => ({ text, bold: index === 0 })),
      ],
      { width, height: HEIGHTS.small, inset: 2, head: HEIGHTS.text },
    ),
    space(1),
  ]);
}
