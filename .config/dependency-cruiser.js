/** The table of DEVELOPERS.md as rules. `types` in the table: only `import type` may cross. */
const runtime = { dependencyTypesNot: ['type-only'] };

/** @type {import('dependency-cruiser').IConfiguration} */
export default {
  forbidden: [
    {
      name: 'solver-is-pure',
      comment: 'The solver computes: no Node, no packages but linear algebra and statistics.',
      severity: 'error',
      from: { path: '^server/solver/' },
      to: { pathNot: ['^server/(solver|job|plan)/', 'node_modules/(ml-matrix|ml-levenberg-marquardt|jstat)/'] },
    },
    {
      name: 'solver-takes-types-of-documents',
      severity: 'error',
      from: { path: '^server/solver/' },
      to: { path: '^server/(job|plan)/', ...runtime },
    },
    {
      name: 'documents-stand-alone',
      severity: 'error',
      from: { path: '^server/(job|plan)/' },
      to: { pathNot: ['^server/(job|plan)/', 'node_modules/typebox/'] },
    },
    {
      name: 'language-takes-types',
      severity: 'error',
      from: { path: '^server/language/' },
      to: { pathNot: ['^server/language/', 'node_modules/fraction.js/'], ...runtime },
    },
    {
      name: 'sheets-take-types-and-words',
      severity: 'error',
      from: { path: '^server/sheets/' },
      to: { path: '^(server|db|web)/', pathNot: '^server/(sheets|language)/', ...runtime },
    },
    {
      name: 'exports-take-types-and-words',
      severity: 'error',
      from: { path: '^server/exports/' },
      to: { path: '^(server|db|web)/', pathNot: '^server/(exports|language)/', ...runtime },
    },
    {
      name: 'nesting-takes-documents-and-solver',
      severity: 'error',
      from: { path: '^server/nesting/' },
      to: { path: '^(server|db|web)/', pathNot: '^server/(nesting|job|solver)/', ...runtime },
    },
    {
      name: 'nesting-is-for-routes',
      severity: 'error',
      from: { path: '^(server|db)/', pathNot: '^server/(nesting|routes)/' },
      to: { path: '^server/nesting/' },
    },
    {
      name: 'database-knows-documents-only',
      severity: 'error',
      from: { path: '^db/' },
      to: { path: '^(server|web)/', pathNot: '^server/(job|plan)/' },
    },
    {
      name: 'page-takes-types-and-words',
      severity: 'error',
      from: { path: '^web/' },
      to: { path: '^(server|db)/', pathNot: '^server/language/', ...runtime },
    },
    {
      name: 'server-does-not-know-the-page',
      severity: 'error',
      from: { path: '^(server|db)/' },
      to: { path: '^web/' },
    },
    {
      name: 'no-circle',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: runtime },
    },
    {
      name: 'resolvable',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: 'no-tests-in-the-program',
      severity: 'error',
      from: { pathNot: '^tests/' },
      to: { path: '^tests/' },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['svelte', 'browser', 'import', 'require', 'node', 'default', 'types'],
    },
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^(dist|data)/' },
  },
};
