import { z } from 'zod';

// Schemas are interpreted, never compiled to code: the window forbids code from strings. A schema decides
// this when it is built, so every schema of the plan takes `z` from here.
z.config({ jitless: true });

export { z };
