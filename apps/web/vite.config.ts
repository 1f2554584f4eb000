import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** Our packages do nothing when they are loaded, so what a page does not use of them is left out. */
const treeshake = { moduleSideEffects: (id: string): boolean => !/\/packages\/[a-z]+\/src\//.test(id.replaceAll('\\', '/')) };

export default defineConfig({
  plugins: [react()],
  worker: { format: 'es', rolldownOptions: { treeshake } },
  build: { target: 'es2023', sourcemap: false, assetsInlineLimit: 0, rolldownOptions: { treeshake } },
  server: { proxy: { '/api': process.env.API ?? 'http://127.0.0.1:4360' } },
});
