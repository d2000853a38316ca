/** Raised with every change of the data; a later version never overwrites what a user edited. */
export const CATALOGUE_VERSION = 2;
