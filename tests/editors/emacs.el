;;; emacs.el --- Drives Emacs as an author does  -*- lexical-binding: t; -*-

;; emacs -q --batch -l INIT -l tests/editors/emacs.el, with the environment of tests/editors/run: COURSE (a copy of the
;; demo course); INIT is what editors/emacs/README.md says to paste.  CLIENT is eglot or lsp-mode.

(require 'cl-lib)

(defun drive-step (format &rest arguments)
  (princ (concat "emacs, " (getenv "CLIENT") ": " (apply #'format format arguments) "\n")))

(defmacro drive-await (what &rest body)
  "Value of BODY, once it is not nil; waits up to 20 seconds."
  `(let ((tries 0) value)
     (while (and (not (setq value (progn ,@body))) (< tries 400))
       (accept-process-output nil 0.05)
       (setq tries (1+ tries)))
     (or value (error "Waited in vain for %s" ,what))))

(defun drive-go (text)
  "Put point on the first TEXT."
  (goto-char (point-min))
  (let ((case-fold-search nil)) (search-forward text))
  (goto-char (match-beginning 0)))

(defun drive-pick (_prompt choices &rest _)
  "Pick the fix with the right name of CHOICES, as a person would."
  (let ((titles (all-completions "" choices)))
    (or (cl-find-if (lambda (title) (string-match-p "infraspinatus" title)) titles)
        (error "No such fix among %S" titles))))

(defvar eglot-sync-connect)
(defvar lsp-auto-guess-root)
(defvar lsp-enable-file-watchers)
(setq eglot-sync-connect t
      lsp-auto-guess-root t
      lsp-enable-file-watchers nil
      enable-local-variables nil)

(drive-step "Emacs %s" emacs-version)
(let ((began (float-time)) (client (getenv "CLIENT")))
  (find-file (expand-file-name "lectures/02-shoulder.md" (getenv "COURSE")))
  ;; What the hooks of the major mode put off until the command is over; batch mode has no command loop to do it.
  (run-hooks 'post-command-hook)
  (if (equal client "eglot")
      (progn
        (drive-await "the server" (eglot-current-server))
        (flymake-mode 1)
        (flymake-start))
    (unless (lsp-workspaces) (lsp))
    (drive-await "the server" (and (lsp-workspaces) (eq 'initialized (lsp--workspace-status (car (lsp-workspaces)))))))
  ;; what was found
  (let ((marked
         (if (equal client "eglot")
             (drive-await "the finding"
               (cl-find-if (lambda (text) (string-match-p "infraspinatous" text))
                           (mapcar #'flymake-diagnostic-text (flymake-diagnostics))))
           (drive-await "the finding"
             (cl-find-if (lambda (text) (string-match-p "infraspinatous" text))
                         (mapcar (lambda (one) (gethash "message" one))
                                 (apply #'append (hash-table-values (lsp-diagnostics)))))))))
    (drive-step "finding after %d ms: %s" (* 1000 (- (float-time) began)) (car (split-string marked "\n"))))
  ;; the fix
  (drive-go "infraspinatous")
  ;; Of several actions eglot asks by the event that came last, and with none (as here) by a menu of the window system.
  (cl-letf (((symbol-function 'completing-read) #'drive-pick)
            (last-nonmenu-event ?x))
    (if (equal client "eglot")
        (eglot-code-actions (point) (+ (point) (length "infraspinatous")) "quickfix" t)
      (call-interactively #'lsp-execute-code-action)))
  (drive-await "the text to change"
    (save-excursion (goto-char (point-min)) (search-forward "infraspinatus, teres minor" nil t)))
  (drive-step "fix taken")
  ;; the card
  (drive-go "suprascapular nerve")
  (let* ((answer (if (equal client "eglot")
                     (jsonrpc-request (eglot-current-server) :textDocument/hover (eglot--TextDocumentPositionParams))
                   (lsp-request "textDocument/hover" (lsp--text-document-position-params))))
         (contents (if (equal client "eglot") (plist-get answer :contents) (gethash "contents" answer)))
         (card (if (equal client "eglot")
                   (eglot--format-markup contents)
                 (lsp--render-on-hover-content contents t))))
    (unless (and (string-match-p "suprascapular nerve" card) (string-match-p "C5" card))
      (error "The card says: %s" card))
    (drive-step "card: %s" (car (split-string (substring-no-properties card) "\n" t))))
  ;; a name
  (goto-char (point-max))
  (insert "\nThe arm is abducted by suprasp")
  (let* ((at (run-hook-wrapped 'completion-at-point-functions
                               (lambda (function) (let ((found (funcall function))) (and (consp found) found)))))
         (table (nth 2 at))
         (typed (buffer-substring-no-properties (nth 0 at) (nth 1 at)))
         (names (mapcar #'substring-no-properties (all-completions typed table))))
    (unless (member "supraspinatus" names) (error "Offered for %S: %S" typed (seq-take names 5)))
    (delete-region (nth 0 at) (nth 1 at))
    (insert (car names))
    (unless (equal (car names) "supraspinatus") (error "Offered first: %s" (car names)))
    (drive-step "completed: %s" (buffer-substring-no-properties (line-beginning-position) (point))))
  ;; the branch tree
  (let* ((note (current-buffer))
         (shows (lambda (text)
                  (with-current-buffer fascicle-tree-buffer
                    (save-excursion (goto-char (point-min)) (search-forward text nil t)))))
         (choose (lambda (text)
                   (select-window (get-buffer-window fascicle-tree-buffer))
                   (drive-go text)
                   (call-interactively (key-binding (kbd "RET"))))))
    (drive-go "Axillary nerve")
    (call-interactively #'fascicle-tree)
    (drive-await "the branch tree" (and (funcall shows "quadrangular space") (funcall shows "deltoid")))
    (drive-go "suprascapular nerve")
    (run-hooks 'post-command-hook)      ; batch mode has no command loop to do it
    (drive-await "the tree of the next nerve" (funcall shows "spinoglenoid notch"))
    (drive-step "branch tree follows point")
    (funcall choose "infraspinatus")
    (unless (and (eq (current-buffer) note) (looking-at "infraspinatus, teres minor"))
      (error "The choice led to %S in %s" (buffer-substring (point) (line-end-position)) (buffer-name)))
    (funcall choose "acromioclavicular joint")
    (drive-await "the entry"
      (let ((entry (get-buffer "*fascicle: acromioclavicular-joint*")))
        (and entry (with-current-buffer entry
                     (and buffer-read-only (save-excursion (goto-char (point-min)) (search-forward "Every fact" nil t)))))))
    (drive-step "branch tree: to the mention, to the entry")
    (switch-to-buffer note))
  (set-buffer-modified-p nil)
  (if (equal client "eglot")
      (eglot-shutdown (eglot-current-server))
    (lsp-workspace-shutdown (car (lsp-workspaces)))))
;;; emacs.el ends here
