// Tests that start a worker start the one of the sources as they are now.
export { ensureWorker as default } from "../../app/_start/install.mjs";
