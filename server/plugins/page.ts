import fastifyStatic from '@fastify/static';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { App } from '../routes/app-type.ts';
import { unknownAddress } from './error-handler.ts';

/** One year [s]: files in assets/ carry a hash of their content in their name. */
const FOR_GOOD = 'public, max-age=31536000, immutable';

/**
 * Serves the built page with its pre-compressed files. An address that is no file and that a browser opens as a
 * page gets the page, which knows its own addresses; any other unknown address gets the one refusal.
 *
 * @param folder where the page was built; null, or a folder without a page: only the API answers
 */
export async function servePage(app: App, folder: string | null): Promise<void> {
  const built = folder !== null && existsSync(join(folder, 'index.html'));
  if (built)
    await app.register(fastifyStatic, {
      root: folder,
      preCompressed: true,
      cacheControl: false,
      dotfiles: 'ignore',
      setHeaders: (reply, path) => {
        reply.header('cache-control', path.startsWith(join(folder, 'assets')) ? FOR_GOOD : 'no-cache');
      },
    });
  app.setNotFoundHandler((request, reply) => {
    const opensPage = request.method === 'GET' && request.headers.accept?.includes('text/html') === true;
    if (built && opensPage && !request.url.startsWith('/api/')) return reply.sendFile('index.html');
    throw unknownAddress(request);
  });
}
