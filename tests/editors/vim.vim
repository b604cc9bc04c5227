" Drives Vim with ALE as an author does: opens the demo note, sees the marked misspelling, takes the fix, reads a card. (Completion
" asks whether keys are waiting, which a script cannot say; it is not driven.) Run by tests/editors/run as
" vim -N -u INIT -S tests/editors/vim.vim, with OUTPUT (a file) and COURSE (a copy of the demo course); INIT is what
" editors/vim/README.md says to paste.

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
  let s:card = s:Await('the card', {-> filter(map(range(1, winnr('$')), {_, win -> join(getbufline(winbufnr(win), 1, '$'), "\n")}), {_, text -> text =~# 'suprascapular nerve' && text =~# 'C5' && text !~# 'Rotator cuff'})})
  call s:Step('card: ' . split(s:card[0], "\n")[0])

catch
  call s:Step('FAILED: ' . v:exception . ' at ' . v:throwpoint)
  call writefile(s:out, $OUTPUT)
  cquit!
endtry
call writefile(s:out, $OUTPUT)
qall!
