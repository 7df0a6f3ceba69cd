import type { MemberGeometry } from '../frame/frame-geometry.ts';
import type { WeldWork } from '../welding/weld-work.ts';
import type { Site } from './bores.ts';

/**
 * Where each weld heats a bore. A butt heats the bore that it closes, a pad that of its end. A saddle heats two: that of
 * the member that ends there, and that of the uncut tube which it sits on, whose wall is heated right through
 * (API RP 582, 7.3, has attachments on walls under 6.5 mm purged; seen second-hand).
 */
export function weldHeatSites(welds: readonly WeldWork[], members: readonly MemberGeometry[]): Site[] {
  const indexOf = (name: string): number => members.findIndex((member) => member.name === name);
  const sites: Site[] = [];
  for (const [weld, { site }] of welds.entries()) {
    const member = indexOf(site.member);
    if (member < 0) continue;
    sites.push({ weld, member, station: site.station });
    const main = site.kind === 'saddle' ? indexOf(site.onto) : -1;
    if (main >= 0) sites.push({ weld, member: main, station: site.ontoStation });
  }
  return sites;
}
