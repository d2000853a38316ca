// A worker thread's first module, in plain JavaScript: Node 20 reads TypeScript only once the loader is
// registered, and a worker does not take that over from the thread that started it.
import { register } from "tsx/esm/api";

register();
await import("./plan-worker.ts");
