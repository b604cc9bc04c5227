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

  if ask("return vim.fn.exists(':FascicleTree')") == 2 then
    go('Axillary nerve')
    ask("vim.cmd('FascicleTree')")
    local tree = await('the branch tree', [[
      for _, window in ipairs(vim.api.nvim_list_wins()) do
        if vim.api.nvim_win_get_config(window).relative ~= '' then
          local text = table.concat(vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(window), 0, -1, false), '\n')
          if text:find('quadrangular space') then return text end
        end
      end]])
    assert(tree:find('deltoid'), 'the tree says: ' .. tree)
    step('branch tree shown')
  end

  keys('<Esc>:qa!<CR>')
  if vim.fn.jobwait({ driven }, 5000)[1] == -1 then error('the editor did not end') end
end

local fine, message = pcall(drive)
if not fine then fail(tostring(message)) else vim.cmd('qa!') end
