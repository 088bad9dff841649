/** Which way imports may point. The compiler's fences (a tsconfig per folder) hold the rest. */
module.exports = {
  forbidden: [
    { name: 'no-circles', severity: 'error', from: {}, to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } } },
    {
      name: 'domain-is-pure',
      comment: 'src-domain imports nothing of main, window or Node.',
      severity: 'error',
      from: { path: '^src-domain' },
      to: { path: '^(src-main|src-renderer|migrations|test)' },
    },
    { name: 'domain-no-node', severity: 'error', from: { path: '^src-domain' }, to: { dependencyTypes: ['core'] } },
    {
      name: 'domain-packages',
      comment: 'The pure packages the design names, and no others.',
      severity: 'error',
      from: { path: '^src-domain' },
      to: {
        dependencyTypes: ['npm', 'npm-dev'],
        pathNot: 'node_modules/(temporal-polyfill|geographiclib-geodesic|astronomy-engine|jstat)/',
      },
    },
    { name: 'main-not-window', severity: 'error', from: { path: '^src-main' }, to: { path: '^src-renderer' } },
    {
      name: 'window-takes-types-of-main-only',
      severity: 'error',
      from: { path: '^src-renderer' },
      to: { path: '^src-main', dependencyTypesNot: ['type-only'] },
    },
    { name: 'window-no-node', severity: 'error', from: { path: '^src-renderer' }, to: { dependencyTypes: ['core'] } },
    {
      name: 'electron-in-hosts-only',
      severity: 'error',
      from: { pathNot: '^src-main/(hosts|preload)' },
      to: { path: 'node_modules/electron/' },
    },
    { name: 'not-to-tests', severity: 'error', from: { path: '^src-' }, to: { path: '^test' } },
  ],
  options: {
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['svelte', 'import', 'require', 'node', 'default', 'types'] },
  },
}
