import type { Frame } from '../../server/job/frame.ts';
import type { Units } from '../../server/job/job.ts';
import { formatInOtherUnit } from '../../server/language/length-format.ts';
import { parseLength } from '../../server/language/length-text.ts';
import { words } from '../../server/language/words.ts';
import { api, type Answer } from '../api/client.ts';
import { ownJob, SIZES_OF } from './own-job.ts';

export const START_FIELDS = ['outsideDiameter', 'wall', 'dieRadius', 'across', 'along'] as const;
export type StartField = (typeof START_FIELDS)[number];

/** A number without a unit is millimetres until the job exists and can say otherwise. */
const UNITS: Units = { length: 'mm', fraction: 16 };

/** The four questions of 'start your own'. */
export class StartForm {
  shape: Frame['shape'] = $state('hoop');
  texts: Record<StartField, string> = $state({ outsideDiameter: '', wall: '', dieRadius: '', across: '', along: '' });
  /** Nothing is marked before the first try. */
  tried = $state(false);
  trouble = $state('');

  /** Fields that this shape asks for. */
  get fields(): readonly StartField[] {
    const sizes = SIZES_OF[this.shape];
    return START_FIELDS.filter((field) => (field !== 'across' && field !== 'along') || sizes[field] !== '');
  }

  understood(field: StartField): string {
    const read = parseLength(this.texts[field], UNITS.length);
    return read.ok ? words('field.understood', { value: formatInOtherUnit(read.mm, UNITS) }) : '';
  }

  troubleOf(field: StartField): string {
    const read = parseLength(this.texts[field], UNITS.length);
    if (!this.tried || (read.ok && read.mm > 0)) return '';
    return read.ok ? words('start.positive') : words(`length.${read.code}`);
  }

  /** Makes the job; the answer is its id, or null where something is still to be typed. */
  async make(): Promise<string | null> {
    this.tried = true;
    this.trouble = '';
    const lengths = { outsideDiameter: 0, wall: 0, dieRadius: 0, across: 0, along: 0 };
    for (const field of this.fields) {
      const read = parseLength(this.texts[field], UNITS.length);
      if (!read.ok || read.mm <= 0) return null;
      lengths[field] = read.mm;
    }
    const inInches = this.fields.every((field) => /["'″′]|in|ft|foot|feet/i.test(this.texts[field]));
    const length = inInches ? 'inch' : 'mm';
    const catalogue = await api.catalogue();
    if (catalogue.kind !== 'done') return this.#fail(catalogue);
    const answer = await api.create(ownJob(catalogue.body.newJobs[this.shape], { length, ...lengths }));
    return answer.kind === 'done' ? answer.body.id : this.#fail(answer);
  }

  /** Says why there is no job. */
  #fail(answer: Exclude<Answer<unknown>, { kind: 'done' }>): null {
    if (answer.kind === 'refused' && answer.problems.length > 0)
      this.trouble = answer.problems.map(({ message }) => message).join(' ');
    else if (answer.kind !== 'conflict') this.trouble = answer.reason;
    return null;
  }
}
