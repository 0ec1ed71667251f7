/** @type {import('next').NextConfig} */
const config = {
  reactStrictMode: true,
  poweredByHeader: false,
  typedRoutes: true,
  // These find their own files (fonts, WebAssembly) beside their code, which a bundle would tear apart.
  serverExternalPackages: [
    '@react-pdf/renderer',
    '@electric-sql/pglite',
    'pglite-prisma-adapter',
    '@prisma/schema-engine-wasm',
    '@prisma/driver-adapter-utils',
  ],
}
export default config
