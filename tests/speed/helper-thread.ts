import { beHelper } from './threads';

await beHelper();
