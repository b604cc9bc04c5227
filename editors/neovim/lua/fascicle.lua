-- fascicle in Neovim: starts the server for the texts of a course and shows what only it has.
--
-- Markdown is always read. Plain text and captions are read only below a folder that holds a `fascicle.toml`, so that a
-- commit message or a log is left alone. Works from Neovim 0.7 on; nothing but Neovim is needed.

local M = {}

M.filetypes = { 'markdown', 'mdx', 'quarto', 'rmd', 'text', 'srt', 'webvtt' }
M.options = { cmd = { 'fascicle', 'serve' }, settings = {} }

local in_course = { text = true, srt = true, webvtt = true }

-- --- the server ---------------------------------------------------------------------------------------------------------

local function clients()
  local list = {}
  for _, client in pairs((vim.lsp.get_clients or vim.lsp.get_active_clients)()) do
    if client.name == 'fascicle' then table.insert(list, client) end
  end
  return list
end

-- The client of a buffer, if there is one.
function M.client(buffer)
  for _, client in ipairs(clients()) do
    if vim.lsp.buf_is_attached(buffer, client.id) then return client end
  end
end

local function request(client, method, params, done, buffer)
  if vim.fn.has('nvim-0.11') == 1 then return client:request(method, params, done, buffer) end
  return client.request(method, params, done, buffer)
end

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

-- Whether a path is the document of an entry, which the server writes into the user's cache.
local function is_entry(path) return path:find('fascicle[/\\]documents[/\\][^/\\]+%.md$') ~= nil end

-- The course that a file belongs to, or nil if the file is none of a course.
function M.root(path, filetype)
  if is_entry(path) then
    local running = clients()[1] -- the document of an entry is read by the server that wrote it
    if running then return running.config.root_dir end
  end
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
  if path == '' or path:match('^%a[%w+.-]+://') or not vim.tbl_contains(M.filetypes, filetype) then return end
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

-- --- the branch tree ----------------------------------------------------------------------------------------------------

-- One panel, which follows the cursor: its buffer and window, the tree that it shows, and the buffer that the tree is of.
local panel = { asked = 0 }
local rest = 120 -- milliseconds for which the cursor must rest
local width = 46
local marks = vim.api.nvim_create_namespace('fascicle')

local function is_open() return panel.window ~= nil and vim.api.nvim_win_is_valid(panel.window) end

local function write(lines)
  vim.bo[panel.buffer].modifiable = true
  vim.api.nvim_buf_set_lines(panel.buffer, 0, -1, false, lines)
  vim.bo[panel.buffer].modifiable = false
end

local function show_tree(tree)
  panel.tree = tree
  write(vim.split(vim.trim(tree.text), '\n'))
  vim.api.nvim_buf_clear_namespace(panel.buffer, marks, 0, -1)
  for number, id in ipairs(tree.lines) do
    if id == tree.id then
      vim.api.nvim_buf_add_highlight(panel.buffer, marks, 'Title', number - 1, 0, -1)
      vim.api.nvim_win_set_cursor(panel.window, { number, 0 })
    end
  end
end

-- Asks for the tree of what is under the cursor of a window. Where nothing is named, the last tree stays.
local function ask(window)
  local buffer = vim.api.nvim_win_get_buf(window)
  local client = M.client(buffer)
  if not client or not is_open() then return end
  panel.asked = panel.asked + 1
  local number = panel.asked
  local params = vim.lsp.util.make_position_params(window, client.offset_encoding)
  request(client, 'fascicle/tree', params, function(error, tree)
    if error or not tree or number ~= panel.asked or not is_open() then return end
    panel.source, panel.client = buffer, client
    show_tree(tree)
  end, buffer)
end

local function follow()
  local window = vim.api.nvim_get_current_win()
  if not is_open() or window == panel.window then return end
  panel.moved = (panel.moved or 0) + 1
  local number = panel.moved
  vim.defer_fn(function()
    if number == panel.moved and vim.api.nvim_win_is_valid(window) then ask(window) end
  end, rest)
end

-- Opens a place of a document in a window that shows texts.
local function jump(place)
  local window = vim.fn.bufwinid(panel.source)
  if window == -1 then vim.cmd('wincmd p') else vim.api.nvim_set_current_win(window) end
  if vim.lsp.util.show_document then
    vim.lsp.util.show_document(place, panel.client.offset_encoding, { focus = true })
  else
    vim.lsp.util.jump_to_location(place, panel.client.offset_encoding)
  end
end

-- Goes from a line of the panel to where the document names the structure first, or to its entry.
function M.go()
  local tree = panel.tree
  local id = tree and tree.lines[vim.api.nvim_win_get_cursor(panel.window)[1]]
  if type(id) ~= 'string' then return end
  local mention = tree.mentions[id]
  if mention then return jump({ uri = vim.uri_from_bufnr(panel.source), range = mention }) end
  local met = vim.lsp.util.make_text_document_params(panel.source)
  request(panel.client, 'fascicle/entry', { id = id, textDocument = met }, function(error, entry)
    if error or not entry then return vim.notify('fascicle: there is no entry ' .. id, vim.log.levels.WARN) end
    local start = { line = 0, character = 0 }
    jump({ uri = entry.uri, range = { start = start, ['end'] = start } })
    vim.bo.readonly, vim.bo.modifiable = true, false
  end, panel.source)
end

-- Opens the panel, or takes the tree of what is under the cursor into it.
function M.tree()
  local window = vim.api.nvim_get_current_win()
  if not M.client(vim.api.nvim_win_get_buf(window)) then
    return vim.notify('fascicle does not run for this buffer', vim.log.levels.WARN)
  end
  if not is_open() then
    vim.cmd('botright vertical ' .. width .. 'new')
    panel.window, panel.buffer = vim.api.nvim_get_current_win(), vim.api.nvim_get_current_buf()
    for option, value in pairs({ buftype = 'nofile', bufhidden = 'wipe', swapfile = false, buflisted = false }) do
      vim.bo[panel.buffer][option] = value
    end
    for option, value in pairs({ number = false, relativenumber = false, wrap = false, cursorline = true, winfixwidth = true }) do
      vim.wo[panel.window][option] = value
    end
    vim.keymap.set('n', '<CR>', M.go, { buffer = panel.buffer, desc = 'To the mention or the entry' })
    vim.keymap.set('n', '<2-LeftMouse>', M.go, { buffer = panel.buffer, desc = 'To the mention or the entry' })
    vim.keymap.set('n', 'q', '<Cmd>close<CR>', { buffer = panel.buffer, desc = 'Close the branch tree' })
    write({ 'Put the cursor into the name of', 'a nerve, a muscle or a joint.' })
    vim.api.nvim_set_current_win(window)
    local group = vim.api.nvim_create_augroup('fascicle-tree', { clear = true })
    vim.api.nvim_create_autocmd({ 'CursorMoved', 'CursorMovedI', 'BufEnter' }, { group = group, callback = follow })
    vim.api.nvim_create_autocmd('BufWipeout', {
      group = group,
      buffer = panel.buffer,
      callback = function()
        vim.api.nvim_create_augroup('fascicle-tree', { clear = true })
        panel.window, panel.tree = nil, nil
      end,
    })
  end
  ask(window)
end

-- --- setting up ---------------------------------------------------------------------------------------------------------

-- What holds for every way of starting the server: the kinds of files, and the command.
function M.register()
  local group = vim.api.nvim_create_augroup('fascicle-files', { clear = true })
  for pattern, filetype in pairs({ ['*.qmd'] = 'quarto', ['*.mdx'] = 'mdx', ['*.srt'] = 'srt', ['*.vtt'] = 'webvtt' }) do
    vim.api.nvim_create_autocmd({ 'BufRead', 'BufNewFile' },
      { group = group, pattern = pattern, command = 'setfiletype ' .. filetype })
  end
  vim.api.nvim_create_user_command('FascicleTree', M.tree, { desc = 'Branch tree of the structure under the cursor' })
end

function M.setup(options)
  M.options = vim.tbl_deep_extend('force', M.options, options or {})
  M.register()
  vim.api.nvim_create_autocmd('FileType', {
    group = vim.api.nvim_create_augroup('fascicle', { clear = true }),
    pattern = M.filetypes,
    callback = function(event) M.attach(event.buf) end,
  })
end

return M
