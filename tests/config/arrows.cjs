// One-way arrows: app → use-cases → db → domain subjects → base, each subject entered by its door.
const SUBJECTS = [
  "base",
  "access",
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

module.exports = {
  forbidden: [
    { name: "no-cycles", severity: "error", from: {}, to: { circular: true } },
    ...SUBJECTS.map((subject, index) => ({
      name: `${subject}-imports-only-what-stands-before-it`,
      severity: "error",
      from: { path: `^lib/${subject}/` },
      to: {
        path: `^(app|seed|prisma|tests|lib/(db|use-cases${SUBJECTS.slice(index + 1)
          .map((later) => `|${later}`)
          .join("")}))/`,
      },
    })),
    {
      name: "db-knows-no-use-case",
      severity: "error",
      from: { path: "^lib/db/" },
      to: { path: "^(app|seed|lib/use-cases)/" },
    },
    {
      name: "use-cases-know-no-page",
      severity: "error",
      from: { path: "^lib/use-cases/" },
      to: { path: "^app/" },
    },
    ...[...SUBJECTS, "db"].map((subject) => ({
      name: `${subject}-is-entered-by-its-door`,
      severity: "error",
      from: { path: "^(app|seed|lib)/", pathNot: `^lib/${subject}/` },
      to: { path: `^lib/${subject}/`, pathNot: `^lib/${subject}/index\\.ts$` },
    })),
    {
      name: "only-db-knows-prisma",
      severity: "error",
      from: { path: "^(app|seed|lib)/", pathNot: "^lib/db/" },
      to: { path: "node_modules/(@prisma|libsql)/" },
    },
    {
      name: "pages-ask-use-cases",
      severity: "error",
      from: { path: "^app/", pathNot: "^app/(_server|_start)/" },
      to: { path: "^lib/db/" },
    },
  ],
  options: {
    tsConfig: { fileName: "tsconfig.json" },
    tsPreCompilationDeps: true,
    doNotFollow: { path: "node_modules" },
    exclude: { path: "lib/db/generated" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "node", "types"],
    },
  },
};
