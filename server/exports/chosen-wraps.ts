import { words } from '../language/words.ts';
import type { Joint } from '../plan/joint.ts';
import type { WrapTemplate } from '../plan/frame.ts';
import type { LegPlan } from '../plan/leg.ts';
import { refused, type ExportInput, type Refused } from './export-file.ts';

/** A wrap with what it is called. */
export type NamedWrap = {
  readonly wrap: WrapTemplate;
  readonly title: string;
  /** The tube from whose datum end its ring is measured; of a leg, the end whose saw cut is the ring. */
  readonly ring: { readonly tube: string } | { readonly legEnd: 'foot' | 'head' };
};

type Chosen = { readonly ok: true; readonly wraps: readonly NamedWrap[] } | Refused;

/**
 * Every wrap of a plan: the joints of the way that is shown, the saddles and holes of the members, the ends of the legs;
 * of one member where one is chosen: a leg is none.
 */
export function chosenWraps({ plan, member }: ExportInput): Chosen {
  if (plan.frame === null) return refused('frame-not-possible');
  const { members } = plan.frame;
  if (member !== null && members.every(({ name }) => name !== member)) return refused('no-such-member', member);
  const way = plan.correction?.ways.find(({ key }) => key === plan.correction?.chosen);
  const wraps = [
    ...(way?.joints ?? []).flatMap(wrapsOfJoint),
    ...members.flatMap(({ templates }) => templates.map(ofMember)),
  ];
  const chosen =
    member === null
      ? [...wraps, ...(plan.site?.legs ?? []).flatMap(wrapsOfLeg)]
      : wraps.filter(({ wrap }) => wrap.member === member);
  return chosen.length === 0 ? refused('no-wraps') : { ok: true, wraps: chosen };
}

function wrapsOfJoint({ number, member, faceA, faceB, letIn }: Joint): NamedWrap[] {
  const face = (wrap: WrapTemplate | null, side: 'A' | 'B'): NamedWrap[] => {
    if (wrap === null) return [];
    const both = wrap.second !== null;
    const title = both
      ? words('export.wrap.joint', { member, joint: number })
      : words('export.wrap.face', { member, joint: number, side });
    return [{ wrap, title, ring: { tube: member } }];
  };
  const piece = (letIn?.templates ?? []).map((wrap, index) => ({
    wrap,
    title: words('export.wrap.let-in', { joint: number, side: index === 0 ? 'A' : 'B' }),
    ring: { tube: words('export.wrap.piece') },
  }));
  return [...face(faceA.template, 'A'), ...face(faceB.template, 'B'), ...piece];
}

const wrapsOfLeg = ({ name, templates }: LegPlan): NamedWrap[] =>
  templates.map((wrap) => {
    const legEnd = wrap.scrap === 'finish' ? 'head' : 'foot';
    return { wrap, title: words(`export.wrap.leg-${legEnd}`, { leg: name }), ring: { legEnd } };
  });

function ofMember(wrap: WrapTemplate): NamedWrap {
  const { member, place } = wrap;
  if (wrap.kind === 'hole')
    return { wrap, title: words('export.wrap.hole', { member, place }), ring: { tube: member } };
  return {
    wrap,
    title: words(place === 'finish' ? 'export.wrap.finish' : 'export.wrap.start', { member }),
    ring: { tube: member },
  };
}
