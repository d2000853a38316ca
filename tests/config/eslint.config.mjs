import next from "eslint-config-next";
import tseslint from "typescript-eslint";

const DOMAIN = [
  "base",
  "calendar",
  "catalog",
  "safety",
  "repeats",
  "shopping",
  "prep",
  "kitchen",
  "reactions",
  "planner",
  "drafts",
];

export default tseslint.config(
  { ignores: ["**/generated/**", "**/*.mjs", "**/*.cjs"] },
  ...next,
  ...tseslint.configs.recommendedTypeChecked,
  {
    files: ["**/*.ts", "**/*.tsx"],
    languageOptions: {
      parserOptions: {
        projectService: true,
        tsconfigRootDir: new URL("../..", import.meta.url).pathname,
      },
    },
    rules: {
      "max-lines": ["error", { max: 300, skipBlankLines: true, skipComments: true }],
      "@typescript-eslint/no-explicit-any": "error",
      "@typescript-eslint/no-non-null-assertion": "error",
      "@typescript-eslint/no-floating-promises": "error",
      "@typescript-eslint/switch-exhaustiveness-check": [
        "error",
        { considerDefaultExhaustiveForUnions: true },
      ],
    },
  },
  {
    // The domain is pure: time, chance and the world outside come in as arguments.
    files: DOMAIN.map((subject) => `lib/${subject}/**/*.ts`),
    rules: {
      "no-restricted-globals": ["error", "process", "fetch", "console"],
      "no-restricted-properties": [
        "error",
        { object: "Math", property: "random" },
        { object: "Date", property: "now" },
      ],
      "no-restricted-syntax": [
        "error",
        {
          selector: "NewExpression[callee.name='Date'][arguments.length=0]",
          message: "The day is an argument.",
        },
      ],
    },
  },
);
