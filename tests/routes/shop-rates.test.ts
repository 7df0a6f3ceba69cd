import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { serverOfEachTest } from './server-under-test.ts';

const { ask } = serverOfEachTest();
const rates = { ...newJob('hoop').rates, name: 'This year', from: '2026-01-01', until: '2026-12-31' };

describe('lists of rates', () => {
  it('are saved, taken out and put back like everything else, and called what they are', async () => {
    await ask('POST', '/api/shop/rates', { document: rates });
    const dearer = { ...rates, tax: { value: 25, since: '2026-07-01', example: false } };
    expect(await ask('PUT', '/api/shop/rates/job-1', { document: dearer, basedOn: 1 })).toMatchObject({
      status: 200,
      body: { revision: 2, document: { tax: { value: 25, example: false } } },
    });
    expect(await ask('POST', '/api/shop/rates', { document: { ...rates, name: 'this YEAR' } })).toMatchObject({
      status: 409,
      body: { error: { message: expect.stringContaining('a list of rates named "This year"') as string } },
    });
    expect(await ask('DELETE', '/api/shop/rates/job-1')).toMatchObject({ status: 204 });
    expect(await ask('POST', '/api/shop/rates/job-1/restore')).toMatchObject({
      status: 200,
      body: { document: dearer },
    });
  });

  it('that no shop has are refused, with the field, its range and the way out', async () => {
    const document = { ...rates, currency: 'euro', margin: { ...rates.margin, value: 95 } };
    expect(await ask('POST', '/api/shop/rates', { document })).toMatchObject({
      status: 422,
      body: {
        error: {
          message: expect.stringMatching(/^This list of rates has 2 values/) as string,
          problems: [
            { field: '/currency', code: 'wrong-form', value: 'euro' },
            {
              field: '/margin/value',
              message: 'Margin is 95; allowed is at least 0 percent, at most 90 percent. Give a smaller value.',
            },
          ],
        },
      },
    });
  });
});
