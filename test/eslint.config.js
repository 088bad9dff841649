import svelte from 'eslint-plugin-svelte'
import ts from 'typescript-eslint'

export default ts.config(
  { ignores: ['out/**', 'node_modules/**', 'release/**', 'test/fixtures/**'] },
  ...ts.configs.strictTypeChecked,
  ...svelte.configs['flat/recommended'],
  {
    languageOptions: { parserOptions: { projectService: true, extraFileExtensions: ['.svelte'] } },
    rules: {
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true, allowBoolean: true }],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/no-non-null-assertion': 'off', // noUncheckedIndexedAccess makes `!` the honest mark of a checked index
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unnecessary-condition': ['error', { allowConstantLoopConditions: true }],
      '@typescript-eslint/no-meaningless-void-operator': 'off', // `void closet.version` is how a derived value says what it follows
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      'svelte/prefer-svelte-reactivity': 'off', // sets and maps are replaced whole, never changed in place, or hold no state
      'svelte/no-unused-svelte-ignore': 'off', // the compiler's own warnings are the judge, and svelte-check fails on them
    },
  },
  { files: ['**/*.svelte', '**/*.svelte.ts'], languageOptions: { parserOptions: { parser: ts.parser } } },
  // State changes behind the checker's back between one line and the next: what it calls always true may not be.
  { files: ['**/*.svelte', '**/*.svelte.ts'], rules: { '@typescript-eslint/no-unnecessary-condition': 'off' } },
  {
    // What passes between components is typed by svelte-check; this parser sees it as any.
    files: ['**/*.svelte'],
    rules: {
      'svelte/no-useless-mustaches': 'off',
      '@typescript-eslint/no-confusing-void-expression': 'off',
      '@typescript-eslint/restrict-plus-operands': 'off',
      ...Object.fromEntries(
        ['argument', 'assignment', 'call', 'member-access', 'return'].map((what) => [`@typescript-eslint/no-unsafe-${what}`, 'off']),
      ),
    },
  },
  { files: ['**/*.js', '**/*.cjs', 'electron.vite.config.ts'], ...ts.configs.disableTypeChecked },
)
