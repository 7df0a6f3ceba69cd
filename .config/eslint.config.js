import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import { fileURLToPath } from 'node:url';
import typescript from 'typescript-eslint';

const root = fileURLToPath(new URL('..', import.meta.url));

export default typescript.config(
  { ignores: ['node_modules/', 'dist/', 'data/'] },
  js.configs.recommended,
  ...typescript.configs.recommendedTypeChecked,
  ...svelte.configs.recommended,
  {
    languageOptions: {
      parserOptions: { projectService: true, tsconfigRootDir: root },
    },
    rules: {
      eqeqeq: 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/require-await': 'off', // hooks and mocks of an asynchronous interface need not wait
    },
  },
  {
    // svelte-check looks at the types inside components; a second program for them here takes a minute
    files: ['**/*.svelte'],
    ...typescript.configs.disableTypeChecked,
    languageOptions: {
      globals: globals.browser,
      parserOptions: { parser: typescript.parser, projectService: false },
    },
  },
  {
    files: ['**/*.svelte.ts'],
    languageOptions: { globals: globals.browser, parserOptions: { parser: typescript.parser } },
  },
  { files: ['web/**/*.ts'], languageOptions: { globals: globals.browser } },
  { files: ['tests/**'], rules: { '@typescript-eslint/no-non-null-assertion': 'off' } },
  {
    files: ['**/*.js', '**/*.mjs', '**/*.d.mts'],
    ...typescript.configs.disableTypeChecked,
    languageOptions: { globals: globals.node, parserOptions: { projectService: false } },
  },
);
