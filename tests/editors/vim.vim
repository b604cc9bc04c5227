" Drives Vim with ALE as an author does: opens the demo note, sees the marked misspelling, takes the fix, reads a card, looks
" at the branch tree, completes a name. Run by tests/editors/run as vim -N -u INIT -S tests/editors/vim.vim, with OUTPUT (a
" file) and COURSE (a copy of the demo course); INIT is what editors/vim/README.md says to paste.

let s:out = []
function! s:Step(text) abort
  call add(s:out, 'vim: ' . a:text)
endfunction

" Waits up to 20 seconds for an expression to be true.
function! s:Await(what, Question) abort
  for l:try in range(400)
    let l:answer = a:Question()
    if !empty(l:answer) | return l:answer | endif
    sleep 50m
  endfor
  throw 'waited in vain for ' . a:what
endfunction

function! s:Marked() abort
  return filter(copy(ale#engine#GetLoclist(bufnr(''))), {_, item -> item.text =~# 'infraspinatous'})
endfunction

" Says how it went and ends.
function! s:End(failed) abort
  if !empty(a:failed) | call s:Step('FAILED: ' . a:failed) | endif
  call writefile(s:out, $OUTPUT)
  execute empty(a:failed) ? 'qall!' : 'cquit!'
endfunction

function! s:Shown() abort
  return map(range(1, winnr('$')), {_, win -> join(getbufline(winbufnr(win), 1, '$'), "\n")})
endfunction

" Completion asks whether keys are waiting, so the keys come one after the other, from a timer, as from a person.
let s:keys = ["Go\<CR>The arm is abducted by suprasp", "\<C-x>\<C-o>", "\<C-y>\<Esc>"]
let s:waited = 0
function! s:Type(timer) abort
  let s:waited += 1
  let l:ready = len(s:keys) isnot 1 || pumvisible()
  if !empty(s:keys) && l:ready
    call feedkeys(remove(s:keys, 0), 't')
  elseif empty(s:keys) && mode() is# 'n' && getline('$') =~# 'abducted by supraspinatus'
    call s:Step('completed: ' . getline('$'))
    call timer_stop(a:timer)
    call s:End('')
  elseif s:waited > 60
    call s:End('waited in vain for the completion; ' . getline('$'))
  endif
endfunction

function! s:Go(text) abort
  call cursor(1, 1)
  call search('\V' . a:text, 'cW')
endfunction


try
  call s:Step('version ' . v:versionlong)
  execute 'edit ' . fnameescape($COURSE . '/lectures/02-shoulder.md')
  let s:found = s:Await('the finding', function('s:Marked'))
  call s:Step('finding: ' . s:found[0].text)

  " The menu of fixes is answered as a person would who types the number of the line with the right name.
  runtime autoload/ale/util.vim
  function! ale#util#Input(message, value, ...) abort
    for l:line in split(a:message, "\n")
      if l:line =~# 'infraspinatus' | return matchstr(l:line, '^\d\+') | endif
    endfor
    return ''
  endfunction
  call s:Go('infraspinatous')
  ALECodeAction
  call s:Await('the text to change', {-> search('infraspinatus, teres minor', 'nw')})
  call s:Step('fix taken')

  call s:Go('suprascapular nerve')
  let g:ale_hover_to_preview = 1
  ALEHover
  let s:card = s:Await('the card', {-> filter(s:Shown(), {_, text -> text =~# 'suprascapular nerve' && text =~# 'C5' && text !~# 'Rotator cuff'})})
  call s:Step('card: ' . split(s:card[0], "\n")[0])

  call s:Go('suprascapular nerve')
  FascicleTree
  call s:Await('the branch tree', {-> filter(s:Shown(), {_, text -> text =~# 'spinoglenoid notch' && text =~# 'acromioclavicular joint'})})
  call s:Step('branch tree shown')
  pclose

  call timer_start(400, function('s:Type'), {'repeat': -1})
catch
  call s:End(v:exception . ' at ' . v:throwpoint)
endtry
