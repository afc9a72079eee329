import tseslint from 'typescript-eslint';
import importX from 'eslint-plugin-import-x';
import { createTypeScriptImportResolver } from 'eslint-import-resolver-typescript';
import { textsRule } from './tests/texts/texts-rule.js';

const zones = [
  { target: './dsp', from: './src', message: 'dsp knows no other room.' },
  { target: './dsp', from: './components', message: 'dsp knows no other room.' },
  { target: './src', from: './components', message: 'src does not know the screen.' },
  { target: './dsp', from: './tests', message: 'The rooms do not know their tests.' },
  { target: './src', from: './tests', message: 'The rooms do not know their tests.' },
  { target: './components', from: './tests', message: 'The rooms do not know their tests.' },
];

export default tseslint.config(
  { ignores: ['dist', 'node_modules', 'tests/.out', 'src/language/made'] },
  ...tseslint.configs.strict,
  {
    plugins: { 'import-x': importX },
    settings: { 'import-x/resolver-next': [createTypeScriptImportResolver()] },
    rules: {
      'import-x/no-restricted-paths': ['error', { zones }],
      'import-x/no-cycle': 'error',
      'import-x/no-unresolved': ['error', { ignore: ['\\?'] }],
      'max-lines': ['error', { max: 300 }],
      eqeqeq: 'error',
      'no-console': 'error',
    },
  },
  {
    files: ['components/**', 'src/**'],
    ignores: ['src/command/**'],
    plugins: { leadline: { rules: { texts: textsRule } } },
    rules: { 'leadline/texts': 'error' },
  },
  { files: ['src/command/**', 'tests/**', '*.js', '*.ts'], rules: { 'no-console': 'off' } },
  {
    files: ['components/**'],
    rules: { '@typescript-eslint/no-unsafe-declaration-merging': 'off' },
  },
);
