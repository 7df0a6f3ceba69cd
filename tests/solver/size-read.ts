import type { Reading } from '../../server/job/came-back.ts';

/** A size of the frame as it came back, read over the outside with the tape's own accuracy [mm]. */
export const sizeRead = (check: string, value: number, index = 0): Reading => ({
  reading: 'size',
  check,
  index,
  reference: 'outside',
  value,
  accuracy: null,
});
