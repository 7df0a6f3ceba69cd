import { existsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { Type, type Static } from 'typebox';
import { problemsOf } from './job/validate.ts';

/** What the environment can set; each has a default. */
const Settings = Type.Object({
  HOOPWRIGHT_PORT: Type.Integer({ minimum: 0, maximum: 65_535, title: 'HOOPWRIGHT_PORT' }),
  HOOPWRIGHT_HOST: Type.String({ minLength: 1, maxLength: 255, title: 'HOOPWRIGHT_HOST' }),
  HOOPWRIGHT_DATA: Type.String({ minLength: 1, maxLength: 4096, title: 'HOOPWRIGHT_DATA' }),
  HOOPWRIGHT_LOG: Type.Enum(['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent'], {
    title: 'HOOPWRIGHT_LOG',
  }),
});
type Settings = Static<typeof Settings>;

export type Config = {
  readonly host: string;
  readonly port: number;
  /** True where the port was set, so that no other may be taken in its place. */
  readonly portIsFixed: boolean;
  readonly databaseFile: string;
  readonly pageFolder: string;
  readonly logLevel: string;
};

export type ReadConfig =
  { readonly ok: true; readonly config: Config } | { readonly ok: false; readonly messages: readonly string[] };

const DEFAULTS: Settings = {
  HOOPWRIGHT_PORT: 8080, // the usual second port for http; common practice
  HOOPWRIGHT_HOST: '127.0.0.1', // this machine alone: nobody signs in, so nobody else gets in
  HOOPWRIGHT_DATA: 'data', // inside the project's folder
  HOOPWRIGHT_LOG: 'warn',
};

/** The folder that package.json stands in, above this file wherever it was built to. */
export function projectFolder(from: string = import.meta.dirname): string {
  if (existsSync(join(from, 'package.json')) || dirname(from) === from) return from;
  return projectFolder(dirname(from));
}

const isSettings = (_values: unknown, messages: readonly string[]): _values is Settings => messages.length === 0;

/** The environment, read once. A variable that is set but empty counts as not set. */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): ReadConfig {
  const set = Object.entries(environment).filter(([name, value]) => Object.hasOwn(DEFAULTS, name) && value !== '');
  const given = Object.fromEntries(
    set.map(([name, value]) => [name, name === 'HOOPWRIGHT_PORT' && /^\d+$/.test(value ?? '') ? Number(value) : value]),
  );
  const values: unknown = { ...DEFAULTS, ...given };
  const messages = problemsOf(Settings, values).map(({ message }) => message);
  if (!isSettings(values, messages)) return { ok: false, messages };
  const root = projectFolder();
  return {
    ok: true,
    config: {
      host: values.HOOPWRIGHT_HOST,
      port: values.HOOPWRIGHT_PORT,
      portIsFixed: Object.hasOwn(given, 'HOOPWRIGHT_PORT'),
      databaseFile: join(resolve(root, values.HOOPWRIGHT_DATA), 'hoopwright.sqlite'),
      pageFolder: join(root, 'dist', 'web'),
      logLevel: values.HOOPWRIGHT_LOG,
    },
  };
}
