-- fascicle in Neovim: starts the server for the texts of a course and shows what only it has.
--
-- Markdown is always read. Plain text and captions are read only below a folder that holds a `fascicle.toml`, so that a
-- commit message or a log is left alone. Works from Neovim 0.7 on; nothing but Neovim is needed.

local M = {}

local always = { markdown = true, mdx = true, quarto = true, rmd = true }
local in_course = { text = true, srt = true, webvtt = true }

M.options = { cmd = { 'fascicle', 'serve' }, settings = {} }

-- The nearest folder above a path that holds one of the names.
local function above(path, names)
  local folder = vim.fn.fnamemodify(path, ':p:h')
  while true do
    for _, name in ipairs(names) do
      if vim.fn.getftype(folder .. '/' .. name) ~= '' then return folder end
    end
    local parent = vim.fn.fnamemodify(folder, ':h')
    if parent == folder then return nil end
    folder = parent
  end
end

-- The course that a file belongs to, or nil if the file is none of a course.
function M.root(path, filetype)
  local course = above(path, { 'fascicle.toml' })
  if course or in_course[filetype] then return course end
  return above(path, { '.git' }) or vim.fn.fnamemodify(path, ':p:h')
end

local function config(root)
  return {
    name = 'fascicle',
    cmd = M.options.cmd,
    root_dir = root,
    workspace_folders = { { uri = vim.uri_from_fname(root), name = vim.fn.fnamemodify(root, ':t') } },
    settings = { fascicle = M.options.settings },
    init_options = M.options.settings,
    capabilities = M.options.capabilities or vim.lsp.protocol.make_client_capabilities(),
  }
end

local started = {} -- clients by root, for the Neovim that has no vim.lsp.start

function M.attach(buffer)
  local path = vim.api.nvim_buf_get_name(buffer)
  local filetype = vim.bo[buffer].filetype
  if path == '' or path:match('^%a[%w+.-]+://') or not (always[filetype] or in_course[filetype]) then return end
  local root = M.root(path, filetype)
  if not root then return end
  if vim.fn.executable(M.options.cmd[1]) == 0 then
    vim.notify_once('fascicle: cannot run "' .. M.options.cmd[1] .. '"; give its path by setup{ cmd = {...} }',
      vim.log.levels.WARN)
    return
  end
  if vim.lsp.start then
    vim.lsp.start(config(root), { bufnr = buffer })
    return
  end
  local id = started[root]
  if not id or vim.lsp.client_is_stopped(id) then id = vim.lsp.start_client(config(root)) end
  started[root] = id
  if id then vim.lsp.buf_attach_client(buffer, id) end
end

-- The client of a buffer, if there is one.
function M.client(buffer)
  local get = vim.lsp.get_clients or vim.lsp.get_active_clients
  local fallback
  for _, client in pairs(get()) do
    if client.name == 'fascicle' then
      fallback = client
      if vim.lsp.buf_is_attached(buffer, client.id) then return client end
    end
  end
  return fallback
end

local function request(client, method, params, done, buffer)
  if vim.fn.has('nvim-0.11') == 1 then return client:request(method, params, done, buffer) end
  return client.request(method, params, done, buffer)
end

-- Shows the branch tree of what is under the cursor in a window below.
function M.tree()
  local buffer = vim.api.nvim_get_current_buf()
  local client = M.client(buffer)
  if not client then return vim.notify('fascicle does not run for this buffer', vim.log.levels.WARN) end
  local params = vim.lsp.util.make_position_params(0, client.offset_encoding)
  request(client, 'fascicle/tree', params, function(error, result)
    if error or not result or not result.text then
      return vim.notify('fascicle: ' .. (error and error.message or 'no nerve or muscle here'))
    end
    vim.lsp.util.open_floating_preview(vim.split(result.text, '\n'), 'text',
      { border = 'single', focus_id = 'fascicle-tree' })
  end, buffer)
end

function M.setup(options)
  M.options = vim.tbl_deep_extend('force', M.options, options or {})
  local group = vim.api.nvim_create_augroup('fascicle', { clear = true })
  local on = vim.api.nvim_create_autocmd
  on({ 'BufRead', 'BufNewFile' }, { group = group, pattern = '*.qmd', command = 'setfiletype quarto' })
  on({ 'BufRead', 'BufNewFile' }, { group = group, pattern = '*.mdx', command = 'setfiletype mdx' })
  on({ 'BufRead', 'BufNewFile' }, { group = group, pattern = '*.srt', command = 'setfiletype srt' })
  on({ 'BufRead', 'BufNewFile' }, { group = group, pattern = '*.vtt', command = 'setfiletype webvtt' })
  on('FileType', {
    group = group,
    pattern = { 'markdown', 'mdx', 'quarto', 'rmd', 'text', 'srt', 'webvtt' },
    callback = function(event) M.attach(event.buf) end,
  })
  vim.api.nvim_create_user_command('FascicleTree', M.tree, { desc = 'Branch tree of the structure under the cursor' })
end

return M
