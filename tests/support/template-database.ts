/** Replaced by the storage work: builds the migrated template once. */
export default function setup(): void {}
