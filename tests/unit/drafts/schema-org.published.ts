/**
 * The parts of the schema.org vocabulary that we write, as JSON Schema: types and properties as
 * published at schema.org/VideoObject, /Clip, /ItemList, /ListItem, /Recipe and /HowToStep; durations
 * as ISO 8601 has them.
 */
const DURATION = { type: "string", pattern: "^PT(?=\\d)(?:\\d+H)?(?:\\d+M)?(?:\\d+S)?$" } as const;
const TEXT = { type: "string", minLength: 1 } as const;
const CONTEXT = { const: "https://schema.org" } as const;

export const CLIP = {
  $id: "clip",
  type: "object",
  required: ["@type", "name", "startOffset", "endOffset"],
  properties: {
    "@type": { const: "Clip" },
    name: TEXT,
    startOffset: { type: "integer", minimum: 0 },
    endOffset: { type: "integer", minimum: 1 },
    url: { type: "string", pattern: "^https?://" },
  },
  additionalProperties: false,
} as const;

export const VIDEO = {
  type: "object",
  required: ["@context", "@type", "name", "description", "duration", "hasPart"],
  properties: {
    "@context": CONTEXT,
    "@type": { const: "VideoObject" },
    name: TEXT,
    description: TEXT,
    url: { type: "string", pattern: "^https?://" },
    uploadDate: { type: "string", pattern: "^\\d{4}-\\d{2}-\\d{2}$" },
    duration: DURATION,
    hasPart: { type: "array", items: { $ref: "clip" } },
  },
  additionalProperties: false,
} as const;

export const ITEM_LIST = {
  type: "object",
  required: ["@context", "@type", "itemListElement"],
  properties: {
    "@context": CONTEXT,
    "@type": { const: "ItemList" },
    name: TEXT,
    numberOfItems: { type: "integer", minimum: 0 },
    itemListOrder: { const: "https://schema.org/ItemListOrderAscending" },
    itemListElement: {
      type: "array",
      items: {
        type: "object",
        required: ["@type", "position", "name"],
        properties: {
          "@type": { const: "ListItem" },
          position: { type: "integer", minimum: 1 },
          name: TEXT,
          description: TEXT,
        },
        additionalProperties: false,
      },
    },
  },
  additionalProperties: false,
} as const;

export const RECIPE = {
  type: "object",
  required: ["@context", "@type", "name"],
  properties: {
    "@context": CONTEXT,
    "@type": { const: "Recipe" },
    name: TEXT,
    author: {
      type: "object",
      required: ["@type", "name"],
      properties: { "@type": { enum: ["Organization", "Person"] }, name: TEXT },
      additionalProperties: false,
    },
    recipeYield: TEXT,
    recipeIngredient: { type: "array", minItems: 1, items: TEXT },
    prepTime: DURATION,
    cookTime: DURATION,
    totalTime: DURATION,
    recipeInstructions: {
      type: "array",
      items: {
        type: "object",
        required: ["@type", "text"],
        properties: { "@type": { const: "HowToStep" }, text: TEXT },
        additionalProperties: false,
      },
    },
  },
  additionalProperties: false,
} as const;
