-- Drives Neovim as an author does: a second Neovim, started with what `editors/neovim/README.md` says to paste, is sent
-- keys and asked what it shows.
--
-- nvim --headless --clean -n -u NONE -c 'luafile tests/editors/neovim.lua', with the environment of tests/editors/run:
-- INIT (the pasted configuration), COURSE (a copy of the demo course), NVIM (the editor that is driven).

local deadline = 20000

local function fail(message)
  io.stderr:write('neovim: FAILED: ' .. message .. '\n')
  vim.cmd('cquit 1')
end

local function step(what) io.stdout:write('neovim: ' .. what .. '\n') end

local function drive()
  local driven = vim.fn.jobstart({ os.getenv('NVIM_PROGRAM') or 'nvim', '--headless', '--embed', '--clean', '-n', '-u', os.getenv('INIT') },
    { rpc = true, on_stderr = function(_, lines) io.stderr:write(table.concat(lines, '\n')) end })
  assert(driven > 0, 'the editor did not start')

  local function ask(code, ...) return vim.rpcrequest(driven, 'nvim_exec_lua', code, { ... }) end
  local function keys(text) vim.rpcrequest(driven, 'nvim_input', text) end
  local function await(what, code, ...)
    local arguments = { ... }
    local answer
    local came = vim.wait(deadline, function()
      answer = ask(code, unpack(arguments))
      return answer ~= nil and answer ~= vim.NIL and answer ~= false
    end, 30)
    if not came then error('waited in vain for ' .. what) end
    return answer
  end
  -- Puts the cursor on the first place of a text.
  local function go(text) ask("vim.fn.cursor(1, 1); vim.fn.search('\\\\V' .. ..., 'cW')", text) end

  step(ask("local v = vim.version(); return ('version %d.%d.%d'):format(v.major, v.minor, v.patch)"))
  local began = vim.loop.hrtime()
  ask("vim.cmd('edit ' .. vim.fn.fnameescape(...))", os.getenv('COURSE') .. '/lectures/02-shoulder.md')

  local marked = await('the finding on the misspelling', [[
    for _, item in ipairs(vim.diagnostic.get(0)) do
      local line = vim.api.nvim_buf_get_lines(0, item.lnum, item.lnum + 1, false)[1]
      if line:sub(item.col + 1, item.end_col) == 'infraspinatous' then return item.message end
    end]])
  step(('finding after %d ms: %s'):format((vim.loop.hrtime() - began) / 1e6, marked))

  -- The menu of fixes is answered as a person would who picks the line with the right name.
  ask([[
    vim.ui.select = function(items, options, choose)
      for number, item in ipairs(items) do
        local shown = options.format_item and options.format_item(item) or tostring(item)
        if shown:find('infraspinatus') then _G.picked = shown; return choose(item, number) end
      end
      _G.picked = 'none of ' .. #items
    end]])
  go('infraspinatous')
  ask('vim.lsp.buf.code_action()')
  await('the text to change', "return vim.fn.search('infraspinatus, teres minor', 'nw') > 0")
  step('fix taken: ' .. ask('return _G.picked'))
  await('the finding to go', [[
    for _, item in ipairs(vim.diagnostic.get(0)) do if item.message:find('infraspinatous') then return false end end
    return true]])

  go('suprascapular nerve')
  ask('vim.lsp.buf.hover()')
  local card = await('the card', [[
    for _, window in ipairs(vim.api.nvim_list_wins()) do
      if vim.api.nvim_win_get_config(window).relative ~= '' then
        return table.concat(vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(window), 0, -1, false), '\n')
      end
    end]])
  assert(card:find('suprascapular nerve') and card:find('C5'), 'the card says: ' .. card)
  step('card: ' .. card:match('[^\n]+'))

  ask("vim.bo.omnifunc = 'v:lua.vim.lsp.omnifunc'; vim.o.completeopt = 'menuone,noselect'")
  keys('<Esc>GoThe arm is abducted by suprasp<C-x><C-o>')
  await('the menu of names', 'return vim.fn.pumvisible() == 1')
  keys('<C-n><C-y><Esc>')
  local line = await('the completed line', "local line = vim.api.nvim_get_current_line(); return line:find('supraspinatus', 1, true) and line")
  step('completed: ' .. line)

  -- The branch tree, in a panel that follows the cursor. Finds the window whose buffer is no file.
  local panel = [[
    local panel
    for _, window in ipairs(vim.api.nvim_list_wins()) do
      if vim.bo[vim.api.nvim_win_get_buf(window)].buftype == 'nofile' and vim.api.nvim_win_get_config(window).relative == '' then
        panel = window
      end
    end
    if not panel then return false end
    local lines = vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(panel), 0, -1, false)
    local text = table.concat(lines, '\n')
  ]]
  local shows = panel .. "return text:find(..., 1, true) and text"
  go('Axillary nerve')
  keys(':FascicleTree<CR>')
  local tree = await('the branch tree', shows, 'quadrangular space')
  assert(tree:find('deltoid'), 'the tree says: ' .. tree)
  keys('gg/suprascapular nerve<CR>')
  await('the tree of the next nerve', shows, 'spinoglenoid notch')
  step('branch tree follows the cursor')

  -- A line of it goes to where the note names the structure first, or else to its entry.
  local choose = panel .. [[
    for number, line in ipairs(lines) do
      if line:find(..., 1, true) then
        vim.api.nvim_set_current_win(panel)
        vim.api.nvim_win_set_cursor(panel, { number, 0 })
        return true
      end
    end]]
  await('the line of the muscle', choose, 'infraspinatus')
  keys('<CR>')
  await('the mention', [[
    local at = vim.api.nvim_win_get_cursor(0)
    local line = vim.api.nvim_get_current_line()
    return vim.fn.expand('%:t') == '02-shoulder.md' and line:sub(at[2] + 1):find('^infraspinatus, teres minor') ~= nil]])
  await('the line of a joint that the note does not name', choose, 'acromioclavicular joint')
  keys('<CR>')
  await('the entry', [[
    local text = table.concat(vim.api.nvim_buf_get_lines(0, 0, -1, false), '\n')
    return vim.fn.expand('%:t') == 'acromioclavicular-joint.md' and text:find('Every fact') ~= nil and vim.bo.readonly]])
  local count = ask([[
    local count = 0
    for _, client in pairs((vim.lsp.get_clients or vim.lsp.get_active_clients)()) do
      if client.name == 'fascicle' then count = count + 1 end
    end
    return count]])
  assert(count == 1, count .. ' servers run, one would do')
  step('branch tree: to the mention, to the entry')

  -- Captions and plain text are read in a course and left alone elsewhere.
  local function file(folder, name, text)
    vim.fn.mkdir(os.getenv('COURSE') .. '/' .. folder, 'p')
    local path = os.getenv('COURSE') .. '/' .. folder .. '/' .. name
    vim.fn.writefile(vim.split(text, '\n'), path)
    return path
  end
  local captions = 'WEBVTT\n\n00:00.000 --> 00:04.000\nThe infraspinatous turns the arm.'
  file('taped', 'fascicle.toml', '')
  ask("vim.cmd('edit ' .. vim.fn.fnameescape(...))", file('taped', 'week-3.vtt', captions))
  await('the finding in the captions', 'return #vim.diagnostic.get(0) == 1')
  ask("vim.cmd('edit ' .. vim.fn.fnameescape(...))", file('elsewhere', 'week-3.txt', captions))
  vim.wait(300)
  assert(ask([[
    for _, client in pairs((vim.lsp.get_clients or vim.lsp.get_active_clients)()) do
      if client.name == 'fascicle' and vim.lsp.buf_is_attached(0, client.id) then return false end
    end
    return #vim.diagnostic.get(0) == 0]]), 'a plain text outside a course is read')
  step('captions of a course read, a plain text outside it left alone')

  keys('<Esc>:qa!<CR>')
  if vim.fn.jobwait({ driven }, 5000)[1] == -1 then error('the editor did not end') end
end

local fine, message = pcall(drive)
if not fine then fail(tostring(message)) else vim.cmd('qa!') end
