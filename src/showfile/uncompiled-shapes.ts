// Loaded by whatever reads with shapes. A show, or a night's copy of one, is read once: compiling each shape first takes
// longer than using it, and needs code made at run time.

import * as z from 'zod/mini';

z.config({ jitless: true });
