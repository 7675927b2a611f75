/** Runs with each file of tests, also where several share a worker and its modules. */
import { afterAll } from 'vitest';
import { tidy } from './kit.ts';

afterAll(tidy);
