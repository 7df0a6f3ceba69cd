import { chromium } from 'playwright-core';
import { findChromium } from '../../server/setup/find-chromium.mjs';

/**
 * Times from a letter typed in the width to the new drawing, in a real browser on loopback [ms], sorted; empty where
 * there is no browser.
 *
 * @param address of the server; `id` of a stored job that is a hoop
 */
export async function typingTimes(address: string, id: string, count: number): Promise<number[]> {
  const executablePath = findChromium();
  if (executablePath === undefined) return [];
  const browser = await chromium.launch({
    executablePath,
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update'],
  });
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    await page.goto(`${address}/#/job/${id}`);
    await page.locator('[data-field="/frame/width/value"]').first().waitFor();
    await page.locator('figure .paper svg path.edge').first().waitFor();
    const times = await page.evaluate(async (rounds: number) => {
      const field = document.querySelector<HTMLInputElement>('input[data-field="/frame/width/value"]');
      const paper = document.querySelector('figure .paper');
      if (field === null || paper === null) throw new Error('The page has no width and no drawing.');
      const found: number[] = [];
      for (let round = 0; round < rounds; round += 1) {
        const drawn = new Promise<void>((resolve) => {
          const observer = new MutationObserver((changes) => {
            const outline = changes.some(({ attributeName }) => attributeName === 'd');
            if (!outline) return;
            observer.disconnect();
            requestAnimationFrame(() => resolve());
          });
          observer.observe(paper, { subtree: true, attributes: true });
        });
        const start = performance.now();
        field.value = String(900 + (round % 90));
        field.dispatchEvent(new InputEvent('input', { bubbles: true }));
        await drawn;
        found.push(performance.now() - start);
        await new Promise((resolve) => setTimeout(resolve, 120));
      }
      return found;
    }, count);
    return times.sort((a, b) => a - b);
  } finally {
    await browser.close();
  }
}
