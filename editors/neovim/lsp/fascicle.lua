-- The configuration of fascicle for `vim.lsp.enable('fascicle')`, Neovim 0.11 and later. Settings go into
-- `vim.lsp.config('fascicle', { settings = { fascicle = { ... } } })`.
local fascicle = require('fascicle')

return {
  cmd = fascicle.options.cmd,
  filetypes = fascicle.filetypes,
  root_dir = function(buffer, found)
    local root = fascicle.root(vim.api.nvim_buf_get_name(buffer), vim.bo[buffer].filetype)
    if root then found(root) end
  end,
  settings = { fascicle = {} },
}
