-- The configuration of fascicle for `vim.lsp.enable('fascicle')`, Neovim 0.11 and later.
return {
  cmd = { 'fascicle', 'serve' },
  filetypes = { 'markdown', 'mdx', 'quarto', 'rmd' },
  root_markers = { 'fascicle.toml', '.git' },
  settings = { fascicle = {} },
}
