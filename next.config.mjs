/** @type {import('next').NextConfig} */
const config = {
  reactStrictMode: true,
  poweredByHeader: false,
  typedRoutes: true,
  // Types are checked by npm test; a stranger's first start need not wait for them.
  typescript: { ignoreBuildErrors: true },
  // These find their own files (fonts, WebAssembly) beside their code, which a bundle would tear apart.
  serverExternalPackages: [
    '@react-pdf/renderer',
    '@resvg/resvg-wasm',
    '@electric-sql/pglite',
    'pglite-prisma-adapter',
    '@prisma/adapter-pg',
  ],
}
export default config
