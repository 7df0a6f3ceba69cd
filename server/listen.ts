import { createServer } from 'node:net';

/** How many ports after a taken one are tried. */
const TRIES = 50;

/** True where nobody listens on a port of this host yet. */
export function isFree(host: string, port: number): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES') resolve(false);
      else reject(error);
    });
    probe.listen({ host, port, exclusive: true }, () => probe.close(() => resolve(true)));
  });
}

/** The first free port at or after one; undefined where none of the next few is free. */
export async function freePort(host: string, from: number): Promise<number | undefined> {
  for (let port = from; port < from + TRIES && port <= 65_535; port += 1) if (await isFree(host, port)) return port;
  return undefined;
}
