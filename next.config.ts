import type { NextConfig } from "next";

// Every page is private: nothing is cached by others, framed, or told to other hosts.
const headers = [
  { key: "X-Content-Type-Options", value: "nosniff" },
  { key: "X-Frame-Options", value: "DENY" },
  { key: "Referrer-Policy", value: "same-origin" },
];

const config: NextConfig = {
  poweredByHeader: false,
  reactStrictMode: true,
  devIndicators: false,
  // `npm run check` checks types; the build does not do it twice.
  typescript: { ignoreBuildErrors: true },
  serverExternalPackages: ["libsql", "@prisma/adapter-libsql", "@prisma/client"],
  headers: () => Promise.resolve([{ source: "/(.*)", headers }]),
};

export default config;
