// The linter: what the compiler does not see. Style and import directions are tests/architecture.spec.ts.

import tseslint from 'typescript-eslint';

export default tseslint.config(
  { ignores: ['.build/**', 'prisma/client/**', 'node_modules/**'] },
  ...tseslint.configs.strict,
  {
    rules: {
      // The index signature and the tuple checks make a stated non-null the shorter truth in places.
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/no-extraneous-class': ['error', { allowWithDecorator: true }],
      '@typescript-eslint/no-invalid-void-type': 'off',
      eqeqeq: 'error',
    },
  },
);
