import swagger from '@fastify/swagger';
import swaggerUi from '@fastify/swagger-ui';
import manifest from '../../package.json' with { type: 'json' };
import type { App } from '../routes/app-type.ts';

/** The page's own policy, but for the small pictures that the reader keeps in its style sheet. */
const READER_POLICY = [
  "default-src 'self'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "object-src 'none'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** The OpenAPI text of every route that is registered afterwards, and a page to read it. */
export async function describeRoutes(app: App): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Hoopwright',
        description:
          'A Job in, a Plan out. Lengths are millimetres, angles degrees, times seconds, money minor units. ' +
          'Every refusal has the shape { error: { code, message, problems? } }.',
        version: manifest.version,
        license: { name: manifest.license, identifier: manifest.license },
      },
    },
    refResolver: { buildLocalReference: (json, _base, _fragment, index) => idOf(json) ?? `def-${String(index)}` },
  });
  await app.register(swaggerUi, {
    routePrefix: '/api/docs',
    staticCSP: true,
    transformStaticCSP: () => READER_POLICY,
    uiConfig: { layout: 'BaseLayout' },
    theme: { title: 'Hoopwright: routes and documents', favicon: [] },
  });
}

const idOf = (json: object): string | undefined =>
  '$id' in json && typeof json.$id === 'string' ? json.$id : undefined;

export function openApiRoute(app: App): void {
  app.get('/api/openapi.json', { schema: { hide: true } }, () => app.swagger());
}
