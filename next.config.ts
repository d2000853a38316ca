import type { NextConfig } from "next";

type Rewrite = { source: string; destination: string; has?: RouteHas[]; missing?: RouteHas[] };
type RouteHas = { type: "host"; value: string } | { type: "header"; key: string; value: string };

// Every page is private: nothing is cached by others, framed, or told to other hosts.
const headers = [
  { key: "X-Content-Type-Options", value: "nosniff" },
  { key: "X-Frame-Options", value: "DENY" },
  { key: "Referrer-Policy", value: "same-origin" },
];

const OWN_NAMES = ["127\\.0\\.0\\.1", "localhost"];
const ELSEWHERE = `(?!https?://(?:${OWN_NAMES.join("|")})(?::\\d+)?$).*`;

/**
 * A name that somebody points at this computer, or a page elsewhere that makes the browser send something here,
 * gets a refusal instead of the series (DNS rebinding, cross-site request forgery).
 */
const refusals: Rewrite[] = [
  {
    source: "/:path*",
    missing: [{ type: "host", value: `(?:${OWN_NAMES.join("|")})` }],
    destination: "/wrong-address",
  },
  {
    source: "/:path*",
    has: [{ type: "header", key: "origin", value: ELSEWHERE }],
    destination: "/wrong-address",
  },
];

const config: NextConfig = {
  poweredByHeader: false,
  reactStrictMode: true,
  devIndicators: false,
  // Ten years of lunches, brought in from a file, are some megabytes.
  experimental: { serverActions: { bodySizeLimit: "200mb" } },
  // `npm run check` checks types; the build does not do it twice.
  typescript: { ignoreBuildErrors: true },
  serverExternalPackages: ["libsql", "@prisma/adapter-libsql", "@prisma/client"],
  rewrites: () => Promise.resolve({ beforeFiles: refusals, afterFiles: [], fallback: [] }),
  headers: () => Promise.resolve([{ source: "/(.*)", headers }]),
};

export default config;
