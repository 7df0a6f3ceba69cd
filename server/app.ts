import fastify from 'fastify';
import type { TypeBoxTypeProvider } from '@fastify/type-provider-typebox';
import { stepMaker } from './exports/step-maker.ts';
import type { App } from './routes/app-type.ts';
import { answerError, handleErrors } from './plugins/error-handler.ts';
import { describeRoutes, openApiRoute } from './plugins/docs.ts';
import { servePage } from './plugins/page.ts';
import { checkRequests } from './plugins/requests.ts';
import { secure } from './plugins/security.ts';
import { catalogueRoutes } from './routes/catalogue-routes.ts';
import { exportRoutes } from './routes/export-routes.ts';
import { jobsRoutes, type JobsService } from './routes/jobs-routes.ts';
import { nestingRoutes } from './routes/nesting-routes.ts';
import { planRoutes } from './routes/plan-routes.ts';
import { quoteRoutes, type QuoteService } from './routes/quote-routes.ts';
import { revisionRoutes } from './routes/revision-routes.ts';
import { sheetRoutes } from './routes/sheet-routes.ts';
import { shopRoutes, type ShopService } from './routes/shop-routes.ts';
import { stockRoutes, type StockService } from './routes/stock-routes.ts';
import { timesRoutes } from './routes/times-routes.ts';

/** Largest request [bytes]; a job with 40 members of 60 points is about a tenth of it. */
const BODY_LIMIT = 1_048_576;

export type AppOptions = JobsService &
  ShopService &
  StockService &
  Pick<QuoteService, 'quotes'> & {
    /** Folder of the built page, or null for the API alone. */
    readonly pageFolder: string | null;
    readonly logLevel: string;
  };

/** The whole server apart from listening. */
export async function buildApp(options: AppOptions): Promise<App> {
  const app: App = fastify({
    bodyLimit: BODY_LIMIT,
    logger: { level: options.logLevel },
    frameworkErrors: answerError,
  }).withTypeProvider<TypeBoxTypeProvider>();
  app.removeContentTypeParser('text/plain');
  checkRequests(app);
  handleErrors(app);
  await secure(app);
  await describeRoutes(app);
  planRoutes(app);
  jobsRoutes(app, options);
  revisionRoutes(app, options);
  sheetRoutes(app, options);
  const maker = stepMaker();
  exportRoutes(app, { ...options, maker });
  quoteRoutes(app, { ...options, maker });
  shopRoutes(app, options);
  timesRoutes(app, options);
  stockRoutes(app, options);
  nestingRoutes(app, options);
  catalogueRoutes(app);
  openApiRoute(app);
  await servePage(app, options.pageFolder);
  return app;
}
