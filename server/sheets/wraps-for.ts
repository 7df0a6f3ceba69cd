import { words, wordsOf } from '../language/words.ts';
import type { Way } from '../plan/correction.ts';
import type { Joint } from '../plan/joint.ts';
import type { MemberPlan, WrapTemplate } from '../plan/frame.ts';
import type { SheetInput } from './sheet-input.ts';
import type { TemplateNames } from './template-pages.ts';

/** A line that is straighter than a saw cuts needs no wrap: it is marked round with the straight edge of a strip [mm]. */
const STRAIGHT = 0.05;

/** Whether a template is worth its page. */
export const isWorthPrinting = ({ low, high, second }: WrapTemplate): boolean =>
  second !== null || high - low > STRAIGHT;

type Named = { readonly template: WrapTemplate; readonly names: TemplateNames };

/** The wraps that the chosen way needs: those of each joint, or the ends and holes of a frame to be made. */
export function wrapsFor({ plan }: SheetInput, way: Way | undefined): Named[] {
  if (way !== undefined && way.joints.length > 0) return way.joints.flatMap(jointWraps);
  if (way !== undefined && way.key !== 'new-frame') return [];
  return (plan.frame?.members ?? []).flatMap(memberWraps);
}

/** Both faces, on one wrap where they are a wedge's or a dart's, then the ends of the let-in piece. */
function jointWraps({ number, member, faceA, faceB, letIn }: Joint): Named[] {
  const faces = ([['A', faceA.template] as const, ['B', faceB.template] as const] as const).flatMap(
    ([side, template]): Named[] => {
      if (template === null || !isWorthPrinting(template)) return [];
      if (template.second !== null) {
        const title = words('sheet.template-both', { number, member });
        const dart = template.kind === 'dart';
        return [
          {
            template,
            names: { title, piece: words(dart ? 'sheet.template-dart' : 'sheet.template-wedge', { member }) },
          },
        ];
      }
      const title = words('sheet.template-joint', { number, side, member });
      const piece = words(side === 'A' ? 'sheet.template-piece-a' : 'sheet.template-piece-b', { member });
      return [{ template, names: { title, piece } }];
    },
  );
  const ends = (letIn?.templates ?? []).flatMap((template, index): Named[] => {
    if (!isWorthPrinting(template)) return [];
    const side = index === 0 ? 'A' : 'B';
    const title = words('sheet.template-let-in', { number, side, member });
    const piece = words('sheet.template-piece-let-in', { number, side });
    return [{ template, names: { title, piece, ring: 'new-piece' } }];
  });
  return [...faces, ...ends];
}

function memberWraps({ name, templates }: MemberPlan): Named[] {
  return templates.map((template): Named => {
    const { kind, place } = template;
    if (kind === 'hole') {
      const title = words('sheet.template-hole', { member: name, place });
      return { template, names: { title, piece: words('sheet.template-piece-hole', { member: name }) } };
    }
    const end = place === 'start' || place === 'finish' ? wordsOf('choice.memberEnd', place) : place;
    const title = words('sheet.template-end', { member: name, end });
    return { template, names: { title, piece: words('sheet.template-piece-end', { member: name }) } };
  });
}
