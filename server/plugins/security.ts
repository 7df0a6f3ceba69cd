import helmet from '@fastify/helmet';
import type { App } from '../routes/app-type.ts';
import { RequestError } from '../routes/request-error.ts';

const SAME = ["'self'"];
const NONE = ["'none'"];

/** Only this server's own files run and load in the page; other sites' pages can neither frame it nor change a job. */
export async function secure(app: App): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: SAME,
        scriptSrc: SAME,
        styleSrc: SAME,
        objectSrc: NONE,
        baseUri: NONE,
        formAction: SAME,
        frameAncestors: NONE,
      },
    },
    // plain http in a workshop: these headers only have a meaning, or a browser's complaint, with https
    strictTransportSecurity: false,
    crossOriginOpenerPolicy: false,
    originAgentCluster: false,
  });
  app.addHook('onRequest', async (request) => {
    const reads = request.method === 'GET' || request.method === 'HEAD';
    if (!reads && request.headers['sec-fetch-site'] === 'cross-site')
      throw new RequestError(403, 'other-site', 'Another site cannot change anything here.');
  });
}
