import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify';
import type { App } from '../routes/app-type.ts';
import { RequestError } from '../routes/request-error.ts';

/** Words for the refusals that come from the server itself, by its error code. */
const REFUSALS: Readonly<Record<string, readonly [code: string, message: string]>> = {
  FST_ERR_CTP_BODY_TOO_LARGE: ['body-too-large', 'The request is larger than 1 MB. Send less.'],
  FST_ERR_CTP_INVALID_MEDIA_TYPE: ['not-json', 'The request is not JSON. Send it with content-type application/json.'],
  FST_ERR_CTP_EMPTY_JSON_BODY: ['not-json', 'The request says that it is JSON, but it is empty. Send a JSON document.'],
  FST_ERR_CTP_INVALID_JSON_BODY: ['not-json', 'The request cannot be read as JSON. Correct its spelling.'],
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: ['length-wrong', 'The request has another length than it says. Send it again.'],
  FST_ERR_BAD_URL: ['address-not-valid', 'The address cannot be read. Correct its spelling.'],
};

/** The one shape of every refusal. */
const shaped = (code: string, message: string, error?: RequestError) => ({
  error: { code, message, ...(error === undefined || error.problems.length === 0 ? {} : { problems: error.problems }) },
  ...error?.more,
});

/** The only place where an error becomes an answer. What is not the request's fault is logged and told without detail. */
export function answerError(error: FastifyError | RequestError, request: FastifyRequest, reply: FastifyReply): void {
  if (error instanceof RequestError) {
    void reply.code(error.statusCode).send(shaped(error.code, error.message, error));
    return;
  }
  const status = error.statusCode ?? 500;
  if (status >= 400 && status < 500) {
    const [code, message] = REFUSALS[error.code] ?? ['request-refused', error.message];
    void reply.code(status).send(shaped(code, message));
    return;
  }
  request.log.error(error);
  void reply.code(500).send(shaped('fault', 'The program has a fault here; it has been logged. Nothing was changed.'));
}

export function handleErrors(app: App): void {
  app.setErrorHandler<FastifyError | RequestError>(answerError);
}

/** The answer to an address that nothing stands at. */
export const unknownAddress = (request: FastifyRequest): RequestError =>
  new RequestError(404, 'address-unknown', `Nothing stands at ${request.method} ${request.url.slice(0, 100)}.`);
