import { config } from "zod";

// Before any schema is made: zod else tries whether it may write code, which this page's policy
// forbids, and the browser reports the try.
config({ jitless: true });
